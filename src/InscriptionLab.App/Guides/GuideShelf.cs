using System;
using System.Collections.Immutable;
using System.IO;
using System.Linq;

namespace InscriptionLab.App.Guides;

/// <summary>The guides. Their Markdown files, which stand beside this one, lie inside the program.</summary>
internal static class GuideShelf
{
    private const string Heading = "# ";

    /// <summary>Gets the words by which guides are asked for, in the order in which a newcomer needs them.</summary>
    internal static ImmutableArray<string> Names { get; } = ["photographing", "reference-list", "findings", "scaling", "method", "training"];

    /// <summary>Gives all guides.</summary>
    internal static ImmutableArray<Guide> All() => [.. Names.Select(name => Find(name)!)];

    /// <summary>Gives the guide of that name, or null where there is none.</summary>
    internal static Guide? Find(string name)
    {
        if (!Names.Contains(name, StringComparer.Ordinal))
        {
            return null;
        }

        using var stream = typeof(GuideShelf).Assembly.GetManifestResourceStream($"guide:{name}.md")
            ?? throw new InvalidOperationException($"The guide {name} does not lie inside the program.");
        using var reader = new StreamReader(stream);
        var text = reader.ReadToEnd();
        return new Guide(name, text[Heading.Length..text.IndexOf('\n', StringComparison.Ordinal)].Trim(), text);
    }
}

using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Text.RegularExpressions;
using Markdig;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;

namespace InscriptionLab.App.Tests.Guides;

/// <summary>The commands that the documents of the project tell their readers to type.</summary>
internal static partial class DocumentCommands
{
    private const string Begin = "./lab ";

    /// <summary>What stands for a word that the reader puts in.</summary>
    private static readonly Dictionary<string, string> Words = new(StringComparer.Ordinal)
    {
        ["SIDE"] = "left",
        ["N"] = "2",
        ["MM"] = "0",
        ["IP"] = "0.0.0.0",
        ["KIND:SIZE"] = "rule:1mm",
        ["NAME"] = "photographing",
    };

    /// <summary>Gets the documents, from the root of the project.</summary>
    internal static IEnumerable<string> Documents =>
    [
        "README.md", "DEVELOPERS.md", "models/README.md", "models/training/README.md", "src/InscriptionLab.App/Demo/README.md",
        .. Directory.EnumerateFiles(Path.Combine(SampleImages.Root, "src/InscriptionLab.App/Guides"), "*.md").Select(file => Path.GetRelativePath(SampleImages.Root, file)),
    ];

    internal static string TextOf(string document) => File.ReadAllText(Path.Combine(SampleImages.Root, document));

    /// <summary>
    /// Gives every command line of the documents with the words after <c>./lab</c>. Where the line shows a usage, with optional parts in brackets, it comes twice: without any of them, and
    /// with all of them. A command that is named alone comes as a request for its help.
    /// </summary>
    internal static IEnumerable<(string Document, string[] Arguments)> All() =>
        from document in Documents
        from line in Lines(TextOf(document))
        from words in Variants(line)
        select (document, words);

    private static IEnumerable<string> Lines(string text)
    {
        var read = Markdown.Parse(text);
        var blocks = read.Descendants<CodeBlock>().SelectMany(block => block.Lines.Lines.Take(block.Lines.Count).Select(line => line.Slice.ToString()));
        return blocks.Concat(read.Descendants<CodeInline>().Select(code => code.Content))
            .Where(line => line.StartsWith(Begin, StringComparison.Ordinal))
            .Select(line => Remark().Replace(line[Begin.Length..], string.Empty).Trim())
            .SelectMany(line => line.Split(", " + Begin));
    }

    private static IEnumerable<string[]> Variants(string line)
    {
        var bare = line;
        for (var before = string.Empty; before != bare;)
        {
            (before, bare) = (bare, Optional().Replace(bare, " "));
        }

        return new[] { bare, line.Replace('[', ' ').Replace(']', ' ') }.Select(Arguments).DistinctBy(words => string.Join('\n', words));
    }

    private static string[] Arguments(string line)
    {
        string[] words =
        [
            .. Word().Matches(line.Replace("...", " ", StringComparison.Ordinal))
                .Select(word => word.Groups[1].Success ? word.Groups[1].Value : word.Value.Split('|')[0])
                .Select(word => Words.GetValueOrDefault(word, word)),
        ];
        return words.Length == 1 && words[0] is not ("test" or "bench" or "serve" or "help") ? ["help", words[0]] : words;
    }

    /// <summary>What follows the command in its line: a remark behind wide space, or where its output goes.</summary>
    [GeneratedRegex(@"( > \S+)?\s{3,}.*$| > \S+$", RegexOptions.CultureInvariant)]
    private static partial Regex Remark();

    [GeneratedRegex(@"\[[^\[\]]*\]", RegexOptions.CultureInvariant)]
    private static partial Regex Optional();

    [GeneratedRegex("\"([^\"]*)\"|\\S+", RegexOptions.CultureInvariant)]
    private static partial Regex Word();
}

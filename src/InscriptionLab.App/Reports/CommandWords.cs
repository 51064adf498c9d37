using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using System.Text.RegularExpressions;
using InscriptionLab.App.Reports.Papers;

namespace InscriptionLab.App.Reports;

/// <summary>
/// Sentences for the user name an option of the command in brackets after the words that need it: "give the height (--plane-offset MM)". Where there
/// is no command line, as on the page, the brackets go and the sentence stands.
/// </summary>
internal static partial class CommandWords
{
    /// <summary>Gives a sentence without the options of the command.</summary>
    internal static string Without(string sentence) => Bracketed().Replace(sentence, string.Empty);

    /// <summary>Gives sentences without the options of the command.</summary>
    internal static ImmutableArray<string> Without(IEnumerable<string> sentences) => [.. sentences.Select(Without)];

    /// <summary>Gives a paper without the options of the command.</summary>
    internal static Paper Without(Paper paper) => paper with { Blocks = [.. paper.Blocks.Select(part => part.Select(Without).ToImmutableArray())] };

    private static Block Without(Block block) => block switch
    {
        Block.Sentences sentences => sentences with { Texts = Without(sentences.Texts) },
        Block.Aside aside => aside with { Text = Without(aside.Text) },
        _ => block,
    };

    [GeneratedRegex(@"\s\(--[^()]*\)", RegexOptions.CultureInvariant)]
    private static partial Regex Bracketed();
}

using System;
using System.IO;
using System.Linq;
using Markdig;
using Markdig.Extensions.AutoIdentifiers;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;

namespace InscriptionLab.App.Guides;

/// <summary>Reads the Markdown of a guide and knows where its links lead.</summary>
internal static class GuideMarkdown
{
    private static readonly MarkdownPipeline Pipeline = new MarkdownPipelineBuilder()
        .DisableHtml()
        .UsePipeTables()
        .UseAutoIdentifiers(AutoIdentifierOptions.GitHub)
        .Build();

    /// <summary>Reads the guide.</summary>
    internal static MarkdownDocument Read(Guide guide) => Markdown.Parse(guide.Text, Pipeline);

    /// <summary>
    /// Gives the guide as a piece of HTML. Markup in the Markdown comes out as text; a link to another guide leads to <c>#help/NAME/HEADING</c>; of a link to
    /// another file of the project, which the page cannot open, the words stay.
    /// </summary>
    internal static string Html(Guide guide)
    {
        var document = Read(guide);
        foreach (var link in document.Descendants<LinkInline>().ToArray())
        {
            var (other, heading) = Target(guide, link);
            if (other is not null)
            {
                link.Url = "#help/" + other + (heading.Length > 0 ? "/" + heading : string.Empty);
            }
            else if (!IsElsewhere(link))
            {
                var words = new EmphasisInline { DelimiterChar = '*', DelimiterCount = 1 };
                link.ReplaceBy(words, copyChildren: true);
            }
        }

        return document.ToHtml(Pipeline);
    }

    /// <summary>Gives the guide that a link leads to, and the heading in it (empty for its beginning); no guide where it leads elsewhere.</summary>
    internal static (string? Guide, string Heading) Target(Guide guide, LinkInline link)
    {
        var parts = (link.Url ?? string.Empty).Split('#', 2);
        var heading = parts.Length == 2 ? parts[1] : string.Empty;
        var name = parts[0].Length == 0 ? guide.Name : Path.GetFileNameWithoutExtension(parts[0]);
        var isGuide = parts[0].Length == 0 || (!parts[0].Contains('/', StringComparison.Ordinal) && GuideShelf.Names.Contains(name, StringComparer.Ordinal));
        return isGuide ? (name, heading) : (null, heading);
    }

    /// <summary>Tells whether a link leads to another place on the web.</summary>
    internal static bool IsElsewhere(LinkInline link) => link.Url?.StartsWith("https://", StringComparison.Ordinal) ?? false;
}

using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using Markdig;
using Markdig.Extensions.AutoIdentifiers;
using Markdig.Renderers.Html;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;
using Xunit;

namespace InscriptionLab.App.Tests.Guides;

/// <summary>Links between the documents lead to files that are there and to headings that they have.</summary>
public sealed class DocumentLinkTests
{
    private static readonly MarkdownPipeline Pipeline = new MarkdownPipelineBuilder().UsePipeTables().UseAutoIdentifiers(AutoIdentifierOptions.GitHub).Build();

    [Fact]
    public void Every_link_leads_somewhere()
    {
        var lost = from document in DocumentCommands.Documents
                   from link in Markdown.Parse(DocumentCommands.TextOf(document), Pipeline).Descendants<LinkInline>()
                   where !link.Url!.Contains("://", StringComparison.Ordinal) && !Leads(document, link.Url)
                   select $"{document}: {link.Url}";

        Assert.Empty(lost);
    }

    [Fact]
    public void A_link_that_leads_nowhere_would_be_told()
    {
        Assert.True(Leads("README.md", "DEVELOPERS.md#the-weighing"));
        Assert.False(Leads("README.md", "DEVELOPERS.md#no-such-heading"));
        Assert.False(Leads("README.md", "NOWHERE.md"));
    }

    private static bool Leads(string document, string url)
    {
        var parts = url.Split('#', 2);
        var file = parts[0].Length == 0 ? document : Path.Combine(Path.GetDirectoryName(document)!, parts[0]);
        return File.Exists(Path.Combine(SampleImages.Root, file)) && (parts.Length == 1 || Headings(file).Contains(parts[1], StringComparer.Ordinal));
    }

    private static IEnumerable<string?> Headings(string document) =>
        Markdown.Parse(DocumentCommands.TextOf(document), Pipeline).Descendants<HeadingBlock>().Select(heading => heading.GetAttributes().Id);
}

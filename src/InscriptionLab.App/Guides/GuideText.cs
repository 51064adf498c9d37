using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text;
using Markdig.Extensions.Tables;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;

namespace InscriptionLab.App.Guides;

/// <summary>Writes a guide for the screen: plain words in lines of bounded width, without marks of Markdown.</summary>
internal sealed class GuideText(Guide guide)
{
    /// <summary>Characters in a line: a terminal of 100 columns.</summary>
    private const int Width = 98;

    private readonly StringBuilder _page = new();

    /// <summary>Gives the guide as text that ends with a line break.</summary>
    internal static string Of(Guide guide)
    {
        var text = new GuideText(guide);
        text.Blocks(GuideMarkdown.Read(guide), string.Empty);
        return text._page.ToString().TrimEnd('\n') + "\n";
    }

    private void Blocks(ContainerBlock blocks, string indent)
    {
        foreach (var block in blocks)
        {
            Block(block, indent);
            if (block is not ListBlock { IsLoose: false } || indent.Length == 0)
            {
                _page.Append('\n');
            }
        }
    }

    private void Block(Block block, string indent)
    {
        switch (block)
        {
            case HeadingBlock heading:
                var words = Joined(heading.Inline);
                _page.Append(CultureInfo.InvariantCulture, $"{words}\n{(heading.Level > 2 ? string.Empty : new string(heading.Level == 1 ? '=' : '-', words.Length) + "\n")}");
                break;
            case ListBlock list:
                List(list, indent);
                break;
            case CodeBlock code:
                _page.AppendJoin(string.Empty, code.Lines.Lines.Take(code.Lines.Count).Select(line => $"{indent}    {line.Slice}\n"));
                break;
            case Table table:
                Rows(table, indent);
                break;
            case ParagraphBlock paragraph:
                Wrapped(indent, indent, Joined(paragraph.Inline));
                break;
            default:
                throw new InvalidOperationException($"The guide {guide.Name} has a {block.GetType().Name} in line {block.Line + 1}, which the screen does not show.");
        }
    }

    private void List(ListBlock list, string indent)
    {
        var number = 0;
        foreach (var item in list.Cast<ListItemBlock>())
        {
            var mark = list.IsOrdered ? string.Create(CultureInfo.InvariantCulture, $"{++number}. ") : "- ";
            var under = indent + new string(' ', mark.Length);
            var start = _page.Length;
            foreach (var block in item)
            {
                Block(block, under);
            }

            _page.Remove(start, under.Length).Insert(start, indent + mark);
        }
    }

    /// <summary>A table whose rows fit stands in columns; of another one each row is a term with what belongs to it.</summary>
    private void Rows(Table table, string indent)
    {
        var rows = table.Cast<TableRow>().Select(row => row.Cast<TableCell>().Select(cell => string.Join(' ', cell.OfType<ParagraphBlock>().Select(block => Joined(block.Inline)))).ToArray()).ToArray();
        var columns = Enumerable.Range(0, rows[0].Length).Select(column => rows.Max(row => column < row.Length ? row[column].Length : 0)).ToArray();
        if (indent.Length + columns.Sum() + (2 * columns.Length) <= Width)
        {
            _page.AppendJoin(string.Empty, rows.Select(row => indent + string.Join("  ", row.Select((cell, column) => cell.PadRight(columns[column]))).TrimEnd() + "\n"));
            return;
        }

        foreach (var row in rows.Skip(rows[0].Length > 2 ? 1 : 0))
        {
            Wrapped(indent, indent + "    ", row[0] + ": " + string.Join("; ", row.Skip(1).Select((cell, column) => rows[0].Length > 2 ? $"{rows[0][column + 1]}: {cell}" : cell).Where(cell => !cell.EndsWith(": ", StringComparison.Ordinal))));
        }
    }

    private void Wrapped(string first, string next, string words)
    {
        var line = new StringBuilder(first);
        var isEmpty = true;
        foreach (var word in words.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (!isEmpty && line.Length + 1 + word.Length > Width)
            {
                _page.Append(line).Append('\n');
                line.Clear().Append(next);
                isEmpty = true;
            }

            line.Append(isEmpty ? string.Empty : " ").Append(word);
            isEmpty = false;
        }

        _page.Append(line).Append('\n');
    }

    private string Joined(IEnumerable<Inline>? inlines) => string.Concat((inlines ?? []).Select(Words));

    private string Words(Inline inline) => inline switch
    {
        LiteralInline literal => literal.Content.ToString(),
        CodeInline code => code.Content,
        LineBreakInline => " ",
        HtmlEntityInline entity => entity.Transcoded.ToString(),
        AutolinkInline link => link.Url,
        LinkInline link when GuideMarkdown.IsElsewhere(link) => $"{Joined(link)} ({link.Url})",
        LinkInline link when GuideMarkdown.Target(guide, link).Guide is { } other && other != guide.Name => $"{Joined(link)} (./lab help {other})",
        ContainerInline container => Joined(container),
        _ => throw new InvalidOperationException($"The guide {guide.Name} has a {inline.GetType().Name} in line {inline.Line + 1}, which the screen does not show."),
    };
}

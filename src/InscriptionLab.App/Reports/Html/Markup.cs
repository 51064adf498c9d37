using System.Net;
using System.Text;

namespace InscriptionLab.App.Reports.Html;

/// <summary>Builds a page. Every text and every attribute is escaped here, so that nothing read from a photo, a list or a file name can become markup.</summary>
internal sealed class Markup
{
    private readonly StringBuilder _page = new();

    internal Markup Open(string element, params (string Name, string Value)[] attributes)
    {
        Tag(element, attributes);
        return this;
    }

    internal Markup Close(string element)
    {
        _page.Append("</").Append(element).Append(">\n");
        return this;
    }

    /// <summary>Writes an element that holds nothing: <c>img</c>, <c>input</c>, shapes of a drawing.</summary>
    internal Markup Empty(string element, params (string Name, string Value)[] attributes)
    {
        Tag(element, attributes);
        if (element is not ("img" or "input" or "meta"))
        {
            _page.Append("</").Append(element).Append('>');
        }

        _page.Append('\n');
        return this;
    }

    internal Markup Text(string text)
    {
        _page.Append(WebUtility.HtmlEncode(text));
        return this;
    }

    internal Markup Element(string element, string text, params (string Name, string Value)[] attributes)
    {
        Tag(element, attributes);
        Text(text);
        _page.Append("</").Append(element).Append(">\n");
        return this;
    }

    /// <summary>Writes the program's own style sheet and document type, which hold nothing from outside.</summary>
    internal Markup Verbatim(string own)
    {
        _page.Append(own);
        return this;
    }

    public override string ToString() => _page.ToString();

    private void Tag(string element, (string Name, string Value)[] attributes)
    {
        _page.Append('<').Append(element);
        foreach (var (name, value) in attributes)
        {
            _page.Append(' ').Append(name).Append("=\"").Append(WebUtility.HtmlEncode(value)).Append('"');
        }

        _page.Append('>');
    }
}

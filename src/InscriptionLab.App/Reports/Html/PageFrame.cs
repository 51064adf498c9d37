using System;
using System.IO;
using System.Security.Cryptography;
using System.Text;

namespace InscriptionLab.App.Reports.Html;

/// <summary>What every page begins and ends with.</summary>
internal static class PageFrame
{
    private const string StyleSheet = "InscriptionLab.App.Reports.Html.page.css";

    internal static void Open(Markup page, string title, string moreStyle = "", string? script = null)
    {
        page.Verbatim("<!DOCTYPE html>\n").Open("html", ("lang", "en")).Open("head")
            .Empty("meta", ("charset", "utf-8"))
            .Empty("meta", ("name", "viewport"), ("content", "width=device-width, initial-scale=1"));
        if (script is not null)
        {
            page.Empty("meta", ("http-equiv", "Content-Security-Policy"), ("content", $"default-src 'none'; img-src data:; style-src 'unsafe-inline'; script-src 'sha256-{Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(script)))}'"));
        }

        page.Element("title", title + " - InscriptionLab")
            .Open("style").Verbatim(Style() + moreStyle).Close("style")
            .Close("head").Open("body")
            .Open("header").Element("p", "InscriptionLab", ("class", "house")).Element("h1", title).Close("header")
            .Open("main");
    }

    internal static string Close(Markup page, string? script = null)
    {
        page.Close("main");
        if (script is not null)
        {
            page.Open("script").Verbatim(script).Close("script");
        }

        return page.Close("body").Close("html").ToString();
    }

    private static string Style()
    {
        using var stream = typeof(PageFrame).Assembly.GetManifestResourceStream(StyleSheet)
            ?? throw new InvalidOperationException("The style sheet is part of the program.");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}

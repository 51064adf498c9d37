using System;
using PdfSharp.Drawing;
using PdfSharp.Fonts;

namespace InscriptionLab.App.Reports.Papers;

/// <summary>The typefaces of printed papers. They lie inside the program, so that a paper looks the same on every machine; both are under the SIL Open Font License 1.1.</summary>
internal sealed class PdfFonts : IFontResolver
{
    /// <summary>Family in which lettering is set.</summary>
    internal const string Serif = "Lab Serif";

    private const string Sans = "Lab Sans";
    private static readonly Lazy<bool> Registered = new(Register);

    internal static XFont Body(double size) => Of(Sans, size, XFontStyleEx.Regular);

    internal static XFont Strong(double size) => Of(Sans, size, XFontStyleEx.Bold);

    internal static XFont Lettering(double size) => Of(Serif, size, XFontStyleEx.Regular);

    /// <inheritdoc/>
    public FontResolverInfo? ResolveTypeface(string familyName, bool bold, bool italic) =>
        new((familyName, bold) switch { (Serif, _) => "libertinus-serif-400-normal", (_, true) => "atkinson-hyperlegible-next-600-normal", _ => "atkinson-hyperlegible-next-400-normal" });

    /// <inheritdoc/>
    public byte[]? GetFont(string faceName) => Bytes(faceName);

    /// <summary>Gives a typeface's file.</summary>
    internal static byte[] Bytes(string face)
    {
        using var stream = typeof(PdfFonts).Assembly.GetManifestResourceStream($"font:{face}.ttf") ?? throw new InvalidOperationException($"The typeface {face} is part of the program.");
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }

    private static XFont Of(string family, double size, XFontStyleEx style) => Registered.Value ? new XFont(family, size, style) : throw new InvalidOperationException("The typefaces are registered on first use.");

    private static bool Register()
    {
        GlobalFontSettings.FontResolver ??= new PdfFonts();
        return true;
    }
}

using System;
using System.Collections.Generic;
using System.Linq;
using InscriptionLab.Measures;
using static InscriptionLab.App.Reports.Figures;

namespace InscriptionLab.App.Reports.Html;

/// <summary>Pictures with lines on them, as drawings whose coordinates are the picture's own pixels: the centre of the top-left pixel is (0, 0).</summary>
internal static class Drawing
{
    /// <summary>Half a pixel: a picture's outer corner lies that far left of and above its first pixel's centre.</summary>
    private const double HalfPixel = 0.5;

    /// <summary>Opens a drawing that shows a window of a picture.</summary>
    internal static Markup OpenDrawing(this Markup page, double left, double top, double width, double height, string label, string style) => page.Open(
        "svg",
        ("class", style),
        ("role", "img"),
        ("aria-label", label),
        ("style", Invariant($"--ratio:{width / height:0.####}")),
        ("viewBox", Invariant($"{left:0.##} {top:0.##} {width:0.##} {height:0.##}")));

    /// <summary>Opens a drawing that shows a whole picture.</summary>
    internal static Markup OpenDrawing(this Markup page, int width, int height, string label, string style) =>
        page.OpenDrawing(-HalfPixel, -HalfPixel, width, height, label, style);

    /// <summary>Puts a picture into a drawing; its file may be smaller than the picture that it shows.</summary>
    internal static Markup Picture(this Markup page, string type, byte[] file, int width, int height, string id) => page.Empty(
        "image",
        ("id", id),
        ("href", $"data:image/{type};base64,{Convert.ToBase64String(file)}"),
        ("x", Invariant($"{-HalfPixel}")),
        ("y", Invariant($"{-HalfPixel}")),
        ("width", Invariant($"{width}")),
        ("height", Invariant($"{height}")),
        ("preserveAspectRatio", "none"));

    internal static Markup Patch(this Markup page, IEnumerable<PixelPoint> corners, string style, string title)
    {
        page.Open("polygon", ("class", style), ("points", Points(corners)));
        return page.Element("title", title).Close("polygon");
    }

    internal static Markup Segment(this Markup page, PixelSegment segment, string style) =>
        page.Empty("polyline", ("class", style), ("points", Points([segment.Start, segment.End])));

    internal static Markup Outline(this Markup page, IEnumerable<PixelPoint> corners, string style) =>
        page.Empty("polygon", ("class", style), ("points", Points(corners)));

    internal static IEnumerable<PixelPoint> Corners(Quad quad) => [quad.TopLeft, quad.TopRight, quad.BottomRight, quad.BottomLeft];

    private static string Points(IEnumerable<PixelPoint> points) => string.Join(' ', points.Select(point => Invariant($"{point.X:0.##},{point.Y:0.##}")));
}

using InscriptionLab.Measures;
using InscriptionLab.Readings;
using InscriptionLab.Strips;

namespace InscriptionLab.App.Reports;

/// <summary>Where letters lie in the strip.</summary>
internal static class StripBoxes
{
    /// <summary>Gives a letter's box in the strip; null where a corner lies beyond the visible side of the tube.</summary>
    internal static Quad? Of(Letter letter, Strip strip)
    {
        var box = letter.InPhoto;
        return strip.Map.ToStrip(box.TopLeft) is { } topLeft
            && strip.Map.ToStrip(box.TopRight) is { } topRight
            && strip.Map.ToStrip(box.BottomRight) is { } bottomRight
            && strip.Map.ToStrip(box.BottomLeft) is { } bottomLeft
                ? new Quad(topLeft, topRight, bottomRight, bottomLeft)
                : null;
    }
}

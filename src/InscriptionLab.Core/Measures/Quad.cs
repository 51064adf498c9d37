namespace InscriptionLab.Measures;

/// <summary>A four-cornered patch of a picture, in the order in which a reader of its lettering sees the corners. The default value is a single point.</summary>
/// <param name="TopLeft">Top-left corner as the reader sees it.</param>
/// <param name="TopRight">Top-right corner.</param>
/// <param name="BottomRight">Bottom-right corner.</param>
/// <param name="BottomLeft">Bottom-left corner.</param>
public readonly record struct Quad(PixelPoint TopLeft, PixelPoint TopRight, PixelPoint BottomRight, PixelPoint BottomLeft)
{
    /// <summary>Gets the mean of the four corners.</summary>
    public PixelPoint Centre => new(
        (TopLeft.X + TopRight.X + BottomRight.X + BottomLeft.X) / 4,
        (TopLeft.Y + TopRight.Y + BottomRight.Y + BottomLeft.Y) / 4);
}

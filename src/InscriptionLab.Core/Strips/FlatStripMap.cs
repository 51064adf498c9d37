using InscriptionLab.Measures;

namespace InscriptionLab.Strips;

/// <summary>The map of a strip that is the photo itself, only scaled: used where no tube was found.</summary>
/// <param name="Scale">Strip pixels per photo pixel, above zero.</param>
public sealed record FlatStripMap(double Scale) : StripMap
{
    /// <inheritdoc/>
    public override PixelPoint ToPhoto(PixelPoint point) => new(((point.X + 0.5) / Scale) - 0.5, ((point.Y + 0.5) / Scale) - 0.5);

    /// <inheritdoc/>
    public override PixelPoint? ToStrip(PixelPoint photoPoint) => new(((photoPoint.X + 0.5) * Scale) - 0.5, ((photoPoint.Y + 0.5) * Scale) - 0.5);

    /// <inheritdoc/>
    public override double Stretch(PixelPoint point) => 1;
}

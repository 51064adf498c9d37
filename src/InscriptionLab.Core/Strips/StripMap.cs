using System;
using InscriptionLab.Imaging;
using InscriptionLab.Measures;

namespace InscriptionLab.Strips;

/// <summary>The exact, invertible way between strip pixels and photo pixels.</summary>
public abstract record StripMap : IPixelMap
{
    /// <summary>Gets a value indicating whether straight lines of the strip are bent in the photo all the way round, so that lettering stands at every angle there and no way is up.</summary>
    public virtual bool Bends => false;

    /// <inheritdoc/>
    public abstract PixelPoint ToPhoto(PixelPoint point);

    /// <inheritdoc/>
    public virtual void FillRun(PixelPoint first, double stepX, double stepY, Span<PixelPoint> photoPoints)
    {
        for (var i = 0; i < photoPoints.Length; i++)
        {
            photoPoints[i] = ToPhoto(new PixelPoint(first.X + (i * stepX), first.Y + (i * stepY)));
        }
    }

    /// <summary>Gives the strip point that shows a photo point, or null where the photo point is not on the tube's visible side.</summary>
    public abstract PixelPoint? ToStrip(PixelPoint photoPoint);

    /// <summary>Gives how much the strip stretches the photo across the tube at a strip point: 1 facing the camera, growing toward the limb.</summary>
    public abstract double Stretch(PixelPoint point);
}

using System;
using System.Linq;
using System.Threading;
using InscriptionLab.Advice;
using InscriptionLab.Cells;
using InscriptionLab.Imaging;
using InscriptionLab.Measures;
using InscriptionLab.Photos;
using InscriptionLab.Tubes;
using InscriptionLab.Vision.Scales;

namespace InscriptionLab.Vision.Light;

/// <summary>Measures a photo where its lettering lies: what limits it and by how much.</summary>
public sealed class LetteringMeter
{
    /// <summary>Longest side at which a scale and the light over the tube are looked for; a card worth measuring by is far larger than a pixel there.</summary>
    private const int DefaultSmallPicture = 1200;

    /// <summary>Any size serves: only whether a card is there is asked. A rule is not looked for, since rows of strokes pass for one.</summary>
    private static readonly Length CardUnit = Length.FromMillimetres(1);

    /// <summary>Letters nearer to the frame than this, in pixels, count as cut.</summary>
    private const double AtFrame = 2;

    private readonly int _smallPicture;
    private readonly LampMeter _lamps;

    /// <summary>Makes a meter.</summary>
    /// <param name="smallPicture">Longest side, in pixels, of the picture in which a scale and the light over the tube are looked for; above zero.</param>
    /// <param name="lamps">How the side of the light is told; null for the defaults.</param>
    /// <exception cref="ArgumentOutOfRangeException">The side is not above zero.</exception>
    public LetteringMeter(int smallPicture = DefaultSmallPicture, LampMeterOptions? lamps = null)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(smallPicture);
        _smallPicture = smallPicture;
        _lamps = new LampMeter(lamps);
    }

    /// <summary>Measures.</summary>
    /// <param name="photo">The photo.</param>
    /// <param name="tube">The tube that carries the lettering; null where none was found.</param>
    /// <param name="reading">What was read on it.</param>
    /// <param name="cancel">Stops the search for a scale.</param>
    public LetteringMeasures Measure(Photo photo, Tube? tube, Readings.Reading reading, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(photo);
        ArgumentNullException.ThrowIfNull(reading);
        using var area = LetteringArea.Of(photo, tube, reading);
        var (sharp, wide, direction) = BlurMeter.Measure(area);
        var (contrast, middle, brightest, balance) = StrokeMeter.Measure(area);
        var lights = LineLight.Of(reading);
        var small = ReducedPhoto.Of(photo.Gray, _smallPicture);
        var letters = reading.Lines.SelectMany(line => line.Letters).Where(letter => !letter.IsSpace && letter.InPhoto != default).ToList();
        var read = area.Along is not null;
        PixelPoint? at = letters.Count == 0 ? null : new PixelPoint(letters.Average(letter => letter.InPhoto.Centre.X), letters.Average(letter => letter.InPhoto.Centre.Y));
        var (away, around) = at is { } centre && tube is not null ? Facing(tube, centre) : (null, null);
        return new LetteringMeasures
        {
            Read = read,
            LetterHeight = read ? PixelLength.FromPixels(area.Height / area.Scale) : null,
            TubeDiameter = tube is null ? null : at is { } place ? tube.DiameterAt(place) : tube.Diameter,
            SharpBlur = PixelLength.FromPixels(sharp),
            WideBlur = PixelLength.FromPixels(wide),
            WideDirection = direction,
            Outlines = tube is null ? null : OutlineMeter.Measure(photo.Gray, tube),
            WashedShare = StrokeMeter.WashedShare(area),
            Burnt = [.. BurntMeter.Of(photo.Gray, reading)],
            Tones = [.. ToneMeter.Of(lights)],
            BrightLevel = brightest,
            MiddleLevel = middle,
            Contrast = contrast,
            StemsToBars = balance,
            Light = read ? _lamps.Measure(small, tube, reading, lights) : null,
            TurnedAway = away,
            Around = around,
            CutByFrame = letters.Any(letter => Touches(letter.InPhoto, photo)),
            JpegQuality = photo.Quality.JpegQuality,
            Blockiness = BlockMeter.Measure(photo.Gray, area),
            ScaleSeen = ShowsScale(small.Picture, cancel),
        };
    }

    private static (Angle? Away, Angle? Around) Facing(Tube tube, PixelPoint at)
    {
        var projection = new CylinderProjection(tube.Pose);
        if (projection.ToSurface(at) is not { } surface)
        {
            return (null, null);
        }

        var point = projection.ToSpace(surface);
        var axisPoint = tube.Pose.AxisPoint + (tube.Pose.AxisDirection * surface.Axial);
        var cosine = (point - axisPoint).Normalised().Dot(point.Normalised() * -1);
        return (Angle.FromRadians(Math.Acos(Math.Clamp(cosine, -1, 1))), surface.Around);
    }

    private static bool Touches(Quad box, Photo photo) => new[] { box.TopLeft, box.TopRight, box.BottomRight, box.BottomLeft }
        .Any(corner => corner.X < AtFrame || corner.Y < AtFrame || corner.X > photo.Gray.Width - 1 - AtFrame || corner.Y > photo.Gray.Height - 1 - AtFrame);

    private static bool ShowsScale(GrayImage picture, CancellationToken cancel) =>
        ScaleFinder.Find(picture, new ScaleRequest(ScaleKind.Aruco, CardUnit), cancel) is not null || ScaleFinder.Find(picture, new ScaleRequest(ScaleKind.Checkerboard, CardUnit), cancel) is not null;
}

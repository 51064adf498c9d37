using System;
using InscriptionLab.Imaging;
using InscriptionLab.Lines;
using InscriptionLab.Measures;
using InscriptionLab.Photos;
using InscriptionLab.Strips;
using InscriptionLab.Vision.Strips;

namespace InscriptionLab.Vision.Lines;

/// <summary>Cuts a traced line out of the photo, straight, upright and at the reader's height; the photo is resampled once.</summary>
/// <param name="options">How to cut.</param>
internal sealed class LineCropper(LineCropOptions options)
{
    /// <summary>Cuts a line out.</summary>
    /// <param name="photo">The photo.</param>
    /// <param name="strip">The strip in which the line was traced; only its map is used.</param>
    /// <param name="trace">Where the line runs, in reading direction before mirroring.</param>
    /// <param name="mirrored">True where the lettering is a mirror image: the crop is turned over and read from the trace's end.</param>
    /// <param name="lettering">Probability that this is lettering.</param>
    internal LetteringLine Cut(Photo photo, Strip strip, LineTrace trace, bool mirrored, Probability lettering)
    {
        var map = Map(strip.Map, trace, mirrored);
        return Place(strip, map, lettering, PhotoSampler.Sample(photo, map, map.Width, map.Height));
    }

    /// <summary>Cuts out the picture of a line alone, as traced.</summary>
    internal GrayImage Crop(Photo photo, Strip strip, LineTrace trace)
    {
        var map = Map(strip.Map, trace, false);
        return PhotoSampler.Sample(photo, map, map.Width, map.Height);
    }

    /// <summary>Says of a crop that was cut out before where it lies.</summary>
    /// <param name="strip">The strip in which the line was traced.</param>
    /// <param name="trace">Where the line runs, in reading direction before mirroring.</param>
    /// <param name="mirrored">True where the lettering is a mirror image.</param>
    /// <param name="lettering">Probability that this is lettering.</param>
    /// <param name="crop">The crop, turned and turned over like the trace.</param>
    internal LetteringLine Place(Strip strip, LineTrace trace, bool mirrored, Probability lettering, GrayImage crop) => Place(strip, Map(strip.Map, trace, mirrored), lettering, crop);

    private static LetteringLine Place(Strip strip, LineCropMap map, Probability lettering, GrayImage crop)
    {
        var trace = map.Trace;
        var inStrip = Box(map);
        var inPhoto = strip.Map.Bends
            ? BentLine.Box(strip.Map, inStrip)
            : new Quad(strip.Map.ToPhoto(inStrip.TopLeft), strip.Map.ToPhoto(inStrip.TopRight), strip.Map.ToPhoto(inStrip.BottomRight), strip.Map.ToPhoto(inStrip.BottomLeft));
        var direction = map.Mirrored ? trace.Turned().Direction : trace.Direction;
        return new LetteringLine(
            crop,
            map,
            inStrip,
            inPhoto,
            new LineDirection(direction, !strip.Map.Bends && IsUpsideDown(strip.Map, trace), map.Mirrored),
            PhotoHeight(strip.Map, trace),
            lettering)
        {
            Bulge = trace.Length > 0 ? trace.Bow / trace.Length : 0,
        };
    }

    private static Quad Box(LineCropMap map)
    {
        var box = map.Trace.Box;
        return map.Mirrored ? new Quad(box.TopRight, box.TopLeft, box.BottomLeft, box.BottomRight) : box;
    }

    /// <summary>Upside down is where the reader's down points up in the photo, within 45 degrees.</summary>
    private static bool IsUpsideDown(StripMap map, LineTrace trace)
    {
        var top = map.ToPhoto(trace.At(trace.Length / 2, -trace.InkHeight / 2));
        var bottom = map.ToPhoto(trace.At(trace.Length / 2, trace.InkHeight / 2));
        return top.Y - bottom.Y > Math.Abs(top.X - bottom.X);
    }

    private static PixelLength PhotoHeight(StripMap map, LineTrace trace)
    {
        var middle = trace.Length / 2;
        return map.ToPhoto(trace.At(middle, -trace.InkHeight / 2)).DistanceTo(map.ToPhoto(trace.At(middle, trace.InkHeight / 2)));
    }

    private LineCropMap Map(StripMap strip, LineTrace trace, bool mirrored)
    {
        var scale = options.InkShare * options.Height / trace.InkHeight;
        var margin = options.Margin * options.Height;
        var wanted = Math.Ceiling(((trace.Length * scale) + (2 * margin)) / options.WidthStep) * options.WidthStep;
        var width = (int)Math.Min(wanted, options.MaximumWidth);
        var ink = Math.Min(trace.Length * scale, width - (2 * margin));
        return new LineCropMap(trace, strip, scale, (width - ink) / 2, width, options.Height, mirrored);
    }
}

using System;
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
        var crop = PhotoSampler.Sample(photo, map, map.Width, map.Height);
        var inStrip = Box(map);
        var inPhoto = strip.Map.Bends
            ? BentLine.Box(strip.Map, inStrip)
            : new Quad(strip.Map.ToPhoto(inStrip.TopLeft), strip.Map.ToPhoto(inStrip.TopRight), strip.Map.ToPhoto(inStrip.BottomRight), strip.Map.ToPhoto(inStrip.BottomLeft));
        var direction = mirrored ? trace.Turned().Direction : trace.Direction;
        return new LetteringLine(
            crop,
            map,
            inStrip,
            inPhoto,
            new LineDirection(direction, !strip.Map.Bends && IsUpsideDown(strip.Map, trace), mirrored),
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

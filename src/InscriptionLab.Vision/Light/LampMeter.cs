using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Advice;
using InscriptionLab.Lines;
using InscriptionLab.Measures;
using InscriptionLab.Outcomes;
using InscriptionLab.Photos;
using InscriptionLab.Tubes;

namespace InscriptionLab.Vision.Light;

/// <summary>
/// Tells from one photo from which side its light comes. Two witnesses are weighed over every direction of a half sphere: the walls of the grooves (<see cref="GrooveLight"/>),
/// which tell the side, and the brightest line along the tube (<see cref="TubeLight"/>), which tells side and height together in the plane square to the axis.
/// Each is wrong at times: metal mirrors its surroundings, and a filling hides walls. So each also has a share of belief for telling nothing.
/// </summary>
public sealed class LampMeter
{
    private const string Stage = "light";

    /// <summary>Longest side of the picture in which the light is looked at, pixels: a tube that fills a fourth of it has three pixels a degree in the middle.</summary>
    private const int LongestSide = 1200;

    private readonly LampMeterOptions _options;

    /// <summary>Makes a meter.</summary>
    /// <param name="options">How far each witness is believed; null for the defaults.</param>
    public LampMeter(LampMeterOptions? options = null) => _options = options ?? new LampMeterOptions();

    /// <summary>Tells from which side the light comes.</summary>
    /// <param name="photo">The photo.</param>
    /// <param name="tube">The tube that carries the lettering; null where none was found.</param>
    /// <param name="reading">What was read on it.</param>
    public Outcome<LampSight> Measure(Photo photo, Tube? tube, Readings.Reading reading)
    {
        ArgumentNullException.ThrowIfNull(photo);
        ArgumentNullException.ThrowIfNull(reading);
        return Measure(ReducedPhoto.Of(photo.Gray, LongestSide), tube, reading, LineLight.Of(reading));
    }

    internal Outcome<LampSight> Measure(ReducedPhoto photo, Tube? tube, Readings.Reading reading, ImmutableArray<LineLight> lights)
    {
        var same = SameWay(reading);
        var lines = same.ConvertAll(index => reading.Lines[index].Line);
        if (lines.Count == 0 || GrooveLight.Of(same.Select(index => lights[index])) is not { } grooves)
        {
            return Refuse("The side of the light was not told: too few letters were read.");
        }

        var frame = Frame.Of(lines.MaxBy(line => line.Crop.Width)!, tube);
        var seen = tube is null || frame is null ? null : OnTube(photo, tube, lines);
        var (x, y, best) = (0.0, 0.0, (Side: 0.0, Height: 0.0, Weight: 0.0));
        var all = 0.0;
        foreach (var side in Steps(-180, 180, _options.Step))
        {
            var groove = Weight(side - grooves.Side, Math.Sqrt((grooves.Spread * grooves.Spread) + (_options.GrooveError.Radians * _options.GrooveError.Radians)), GrooveTells(grooves), Math.Tau);
            foreach (var height in Steps(_options.Step, 90, _options.Step))
            {
                var weight = groove * (height <= _options.RakingTo.Radians ? _options.Raking / _options.RakingTo.Radians : (1 - _options.Raking) / ((Math.PI / 2) - _options.RakingTo.Radians));
                if (seen is { } bright)
                {
                    weight *= Weight(frame!.Around(side, height) - bright.FromLetters, _options.HighlightError.Radians, _options.HighlightTells * Math.Max(0, 1 - (bright.Rival * bright.Rival)), Math.PI);
                }

                (x, y, all) = (x + (weight * Math.Cos(side)), y + (weight * Math.Sin(side)), all + weight);
                best = weight > best.Weight ? (side, height, weight) : best;
            }
        }

        // The spread of a wrapped normal whose mean resultant has this length (Mardia and Jupp, Directional Statistics, 2000, 2.3).
        var told = Math.Atan2(y, x);
        var spread = Math.Sqrt(-2 * Math.Log(Math.Clamp(Math.Sqrt((x * x) + (y * y)) / all, 1e-9, 1)));
        return spread > _options.WidestSpread.Radians
            ? Refuse(seen is { Rival: > 0.6 } ? "The side of the light was not told: the metal mirrors more than one bright thing, and the grooves show no clear side." : "The side of the light was not told: the grooves show no clear side.")
            : new Outcome<LampSight>.Found(new LampSight(Angle.FromRadians(told), Angle.FromRadians(spread), InPhoto(lines[0], told), seen is null ? "walls of the grooves" : "walls of the grooves and the bright line along the tube"));
    }

    private double GrooveTells(GrooveLight grooves) => _options.GrooveTells * Math.Min(1, grooves.Agreement / _options.FullAgreement);

    /// <summary>Numbers of the lines that run as the longest one does.</summary>
    private static List<int> SameWay(Readings.Reading reading)
    {
        const double Alike = 0.2;
        var lines = reading.Lines.Select(line => line.Line).ToList();
        var longest = lines.MaxBy(line => line.Crop.Width);
        return [.. Enumerable.Range(0, lines.Count).Where(index => lines[index].Direction.Mirrored == longest!.Direction.Mirrored
            && Math.Abs(Math.IEEERemainder(InPhoto(lines[index], 0).Radians - InPhoto(longest, 0).Radians, Math.Tau)) < Alike)];
    }

    private static (double FromLetters, double Rival)? OnTube(ReducedPhoto photo, Tube tube, List<LetteringLine> lines)
    {
        const double Room = 0.3;
        var projection = new CylinderProjection(tube.Pose);
        var corners = lines.SelectMany(line => new[] { line.InPhoto.TopLeft, line.InPhoto.TopRight, line.InPhoto.BottomRight, line.InPhoto.BottomLeft }).Select(projection.ToSurface).OfType<SurfacePoint>().ToList();
        return corners.Count > 0 && TubeLight.Of(photo, tube, corners.Min(place => place.Axial) - Room, corners.Max(place => place.Axial) + Room) is { } light
            ? (light.Around.Radians - corners.Average(place => place.Around.Radians), light.Rival)
            : null;
    }

    /// <summary>Belief in an error: a bell of the given width for a witness that tells, evenly spread for one that does not.</summary>
    private static double Weight(double error, double width, double tells, double range)
    {
        var wrapped = Math.IEEERemainder(error, Math.Tau);
        return (tells * Math.Exp(-wrapped * wrapped / (2 * width * width)) / (width * Math.Sqrt(Math.Tau))) + ((1 - tells) / range);
    }

    private static IEnumerable<double> Steps(double from, double to, double step)
    {
        for (var degrees = from + (step / 2); degrees < to; degrees += step)
        {
            yield return degrees * Math.PI / 180;
        }
    }

    private static Angle InPhoto(LetteringLine line, double side)
    {
        const double Reach = 4;
        var middle = new PixelPoint(line.Crop.Width / 2.0, line.Crop.Height / 2.0);
        var (sin, cos) = Math.SinCos(side);
        var (from, to) = (line.CropToPhoto.ToPhoto(middle), line.CropToPhoto.ToPhoto(new PixelPoint(middle.X + (Reach * cos), middle.Y + (Reach * sin))));
        return Angle.FromRadians(Math.Atan2(to.Y - from.Y, to.X - from.X));
    }

    private static Outcome<LampSight> Refuse(string sentence) => new Outcome<LampSight>.Declined(
        new Refusal(Stage, sentence, "Darken the room, cover what the metal reflects with dull dark cloth, and use one small lamp low over the surface."));

    /// <summary>How a line's reading direction and foot lie on the tube.</summary>
    private sealed class Frame
    {
        private readonly double _onward;
        private readonly double _down;

        private Frame(double onward, double down) => (_onward, _down) = (onward, down);

        internal static Frame? Of(LetteringLine line, Tube? tube)
        {
            if (tube is null)
            {
                return null;
            }

            const double Reach = 4;
            var projection = new CylinderProjection(tube.Pose);
            var middle = new PixelPoint(line.Crop.Width / 2.0, line.Crop.Height / 2.0);
            SurfacePoint? At(double x, double y) => projection.ToSurface(line.CropToPhoto.ToPhoto(new PixelPoint(middle.X + x, middle.Y + y)));
            if (At(0, 0) is not { } here || At(Reach, 0) is not { } onward || At(0, Reach) is not { } down)
            {
                return null;
            }

            double Arc(SurfacePoint to) => (to.Around.Radians - here.Around.Radians) / Math.Sqrt(Math.Pow(to.Around.Radians - here.Around.Radians, 2) + Math.Pow(to.Axial - here.Axial, 2));
            return new Frame(Arc(onward), Arc(down));
        }

        /// <summary>Gives the angle round the axis, from the lettering, of a lamp at a side and height over the lettering.</summary>
        internal double Around(double side, double height)
        {
            var arc = (Math.Cos(side) * _onward) + (Math.Sin(side) * _down);
            return Math.Atan2(Math.Cos(height) * arc, Math.Sin(height));
        }
    }
}

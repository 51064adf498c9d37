using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Globalization;
using System.IO;
using System.Linq;
using InscriptionLab.Gathering;
using InscriptionLab.Readings;
using InscriptionLab.Reliefs;
using InscriptionLab.Strips;

namespace InscriptionLab.App.Examining;

/// <summary>What is said of photos that belong together.</summary>
internal static class SetSentences
{
    /// <summary>Why two photos belong together.</summary>
    internal static string Of(PhotoTie tie, ImmutableArray<Examination> photos) =>
        $"{Path.GetFileName(photos[tie.First].Photo.File)} and {Path.GetFileName(photos[tie.Second].Photo.File)}: {tie.Reason}.";

    /// <summary>How photos of a turned tube were joined: how many, how much of the tube they show, and how well the seams fit.</summary>
    internal static IEnumerable<string> Of(TurnMosaic mosaic, ImmutableArray<Examination> photos)
    {
        yield return Invariant($"{mosaic.Views.Length} of {photos.Length} photos are joined to one strip by marks on the metal that fit; it shows {mosaic.ShareSeen * 100:0} % of the circumference.");
        var left = photos.Where((_, photo) => mosaic.Views.All(view => view.PhotoIndex != photo)).Select(photo => Path.GetFileName(photo.Photo.File)).ToList();
        if (left.Count > 0)
        {
            yield return $"Not joined, because nothing on the metal tells their turn: {string.Join(", ", left)}.";
        }

        var seams = mosaic.SeamError.Pixels / (2 * Math.PI * mosaic.PixelsPerRadius) * 100;
        yield return Invariant($"At the seams neighbouring photos fit to {seams:0.00} % of the circumference (root mean square, from the median of what pieces of them, fitted by themselves, are off).");
        yield return mosaic.Closure is { } rest
            ? Invariant($"The photos go all the way round; the steps add up to {360 + rest.Degrees:0.0} degrees, and the rest is spread over them.")
            : "The photos do not go all the way round without a gap.";
        yield return "Turns: " + string.Join(", ", mosaic.Views.OrderBy(view => view.PhotoIndex).Select(view => Invariant($"{Path.GetFileName(photos[view.PhotoIndex].Photo.File)} {(view.Turn.Degrees - mosaic.Views[0].Turn.Degrees + 720.05) % 360 - 0.05:0.0}"))) + " degrees.";
    }

    /// <summary>What several lamps told of the surface, and where they are taken to have stood.</summary>
    internal static string Of(SurfaceRelief relief)
    {
        var stands = string.Join("; ", relief.Lamps.Select(lamp => Invariant($"{Math.Abs(lamp.Along.Degrees):0} degrees toward the {(lamp.Along.Degrees < 0 ? "start" : "end")} of the tube and {Math.Abs(lamp.Around.Degrees):0} degrees {(lamp.Around.Degrees < 0 ? "up" : "down")} round it")));
        return (relief.Kind == ReliefKind.Normals ? "The form of the surface was worked out from the light of several lamps" : "The lamps differ in one direction only, so slopes are known in that direction only and strokes along it do not show in the relief")
            + $"; the lamps {(relief.LampsGiven ? "as stated" : "as the shading of the tube tells them")} stood: {stands}. Depths are relative.";
    }

    /// <summary>Says that two lines are cut to unlike depths, and what that is worth; null where they are not.</summary>
    internal static string? OfDepths(Reading reading, SurfaceRelief relief) => LineDepths.Unequal(LineDepths.Of(reading, relief)) is var (deep, shallow)
        ? Invariant($"'{reading.Lines[deep.Line].Text}' lies about {deep.Depth / shallow.Depth:0.0} times deeper than '{reading.Lines[shallow.Line].Text}' (middle of {deep.Letters} and {shallow.Letters} letters). Lines cut in one go mostly share their depth (common practice); a line added later, but as well wear, polishing, smaller letters or lighter pressure, makes them unlike. This is an observation and no proof.")
        : null;

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}

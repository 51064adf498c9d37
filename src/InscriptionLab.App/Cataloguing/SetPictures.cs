using System;
using System.Collections.Generic;
using InscriptionLab.App.Examining;
using InscriptionLab.App.Reports;
using InscriptionLab.Cataloguing;
using InscriptionLab.Reliefs;
using InscriptionLab.Vision.Pictures;
using InscriptionLab.Vision.Relief;

namespace InscriptionLab.App.Cataloguing;

/// <summary>Pictures of photos read together: the joined strip, the grooves, and the surface over which a lamp can be moved.</summary>
internal static class SetPictures
{
    /// <summary>Name of the picture over which a lamp can be moved: normals in red and green, albedo in blue.</summary>
    internal const string Relight = "relight";

    /// <summary>Name of the picture of heights.</summary>
    internal const string Grooves = "grooves";

    /// <summary>Name of the strip that photos of a turned tube were joined to.</summary>
    internal const string Strip = "strip";

    /// <summary>Longest side of the picture to relight, in pixels: each movement of the lamp lights every pixel again.</summary>
    internal const int LongestRelit = 1000;

    /// <summary>Longest side of the other pictures that the catalogue keeps, in pixels: letters of 40 pixels stay legible, and a picture stays below a megabyte.</summary>
    internal const int LongestKept = 3000;

    private const string Png = "image/png";
    private const string Jpeg = "image/jpeg";

    /// <summary>Gives the pictures as the catalogue keeps them.</summary>
    internal static IEnumerable<PictureEntry> ToKeep(SetExamination set)
    {
        if (set.Mosaic is { } mosaic)
        {
            yield return Kept(Strip, Jpeg, mosaic.Image.Width, mosaic.Image.Height, LongestKept, side => PictureEncoder.ToJpeg(mosaic.Image, side));
        }

        if (set.Relief is not { } relief)
        {
            yield break;
        }

        var cut = ReliefCut.Round(relief, set.Reading);
        if (relief.Kind == ReliefKind.Normals)
        {
            yield return Kept(Relight, Png, cut.Width, cut.Height, LongestRelit, side => PictureEncoder.ToPng(cut.Of(ReliefPictures.ForRelighting(relief)), side));
        }

        yield return Kept(Grooves, Jpeg, cut.Width, cut.Height, LongestKept, side => PictureEncoder.ToJpeg(cut.Of(ReliefPictures.Grooves(relief)), side));
    }

    private static PictureEntry Kept(string name, string type, int width, int height, int longest, Func<int, byte[]> encode)
    {
        var shrink = Math.Min(1, (double)longest / Math.Max(width, height));
        return new PictureEntry(name, type, Math.Max(1, (int)Math.Round(width * shrink)), Math.Max(1, (int)Math.Round(height * shrink)), [.. encode(longest)]);
    }
}

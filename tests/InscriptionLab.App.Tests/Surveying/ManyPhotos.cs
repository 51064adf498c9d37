using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Text;
using InscriptionLab.Vision.Photos;
using InscriptionLab.Vision.Pictures;

namespace InscriptionLab.App.Tests.Surveying;

/// <summary>Copies of the sample photos that differ in their bytes, not in their pixels: a few bytes stand behind the end of each picture.</summary>
internal static class ManyPhotos
{
    /// <summary>Fills a folder.</summary>
    /// <param name="folder">A new folder.</param>
    /// <param name="count">How many photos.</param>
    /// <param name="damaged">How many files more that are no photo.</param>
    /// <param name="side">Longest side to which the samples are made smaller, so that one takes less time; null to leave them as they are.</param>
    internal static void Fill(string folder, int count, int damaged, int? side = null)
    {
        Directory.CreateDirectory(folder);
        List<byte[]> samples = [.. Directory.GetFiles(SampleImages.Folder, "*.jpg").Order(StringComparer.Ordinal).Take(count).Select(sample => Smaller(sample, side))];
        for (var number = 0; number < count; number++)
        {
            byte[] bytes = [.. samples[number % samples.Count], .. Encoding.ASCII.GetBytes(FormattableString.Invariant($"{number}"))];
            File.WriteAllBytes(Path.Combine(folder, FormattableString.Invariant($"{number:00000}.jpg")), bytes);
        }

        for (var number = 0; number < damaged; number++)
        {
            File.WriteAllText(Path.Combine(folder, FormattableString.Invariant($"damaged-{number}.jpg")), FormattableString.Invariant($"Dear Sir {number}"));
        }
    }

    private static byte[] Smaller(string sample, int? side) =>
        side is { } longest ? PictureEncoder.ToJpeg(new PhotoReader(new PhotoLimits()).Read(sample).Colour, longest) : File.ReadAllBytes(sample);
}

using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Globalization;
using System.Linq;
using System.Threading;
using InscriptionLab.Gathering;
using InscriptionLab.Measures;
using InscriptionLab.Outcomes;
using InscriptionLab.Reliefs;
using InscriptionLab.Strips;
using InscriptionLab.Vision.Reading;
using InscriptionLab.Vision.Relief;
using InscriptionLab.Vision.Strips;
using InscriptionLab.Vision.Tests.Rendering;
using InscriptionLab.Vision.Tests.Strips;
using InscriptionLab.Vision.Tests.Tubes;
using OpenCvSharp;
using Xunit;

namespace InscriptionLab.Vision.Tests.Relief;

/// <summary>How well rendered raking sets are read: the best single photo, all photos together, and with pictures of the form beside them. Outlines are those of the scene.</summary>
public sealed class RakingReadingsTests(ITestOutputHelper output)
{
    private static readonly string[][] Texts =
    [
        ["Tollivor", "Brackhaven"], ["Jas. Fennimarch", "Marlhaven"], ["Wm. Cawdry", "& Son"], ["Edw. Hathersley", "Port Tressick"],
        ["Barckwell & Co", "Optician"], ["R. Pellmaine", "Monteverra"], ["H. Stourvane", "Day or Night"], ["Quillard Bros", "Brackhaven"],
    ];

    /// <summary>Lettering on which nothing was chosen.</summary>
    private static readonly string[][] OtherTexts =
    [
        ["Wescombe Tarn", "Saltmere"], ["J. Ollerby", "Quay Street"], ["Drennavick", "Improved"], ["Thos. Hulme & Co", "No. 3276"],
        ["Gwendraith", "Sallowby"], ["F. Kirrowden", "Neuwarth"], ["Pynchfold Bros", "Night Glass"], ["Ezra Lumley", "Makers to"],
    ];

    private static readonly HersheyFonts[] Fonts = [HersheyFonts.HersheyTriplex, HersheyFonts.HersheyComplex, HersheyFonts.HersheyTriplex | HersheyFonts.Italic, HersheyFonts.HersheySimplex];

    private static readonly (double Around, double Along)[] Stands = [(8, 66), (10, -66), (-68, 4), (55, 38), (-40, -48), (66, -20), (-30, 58), (40, -55)];

    [Theory(Explicit = true)]
    [InlineData(2, false)]
    [InlineData(4, false)]
    [InlineData(8, false)]
    [InlineData(2, true)]
    [InlineData(4, true)]
    [InlineData(8, true)]
    public void Character_errors_of_raking_sets(int lamps, bool others)
    {
        var texts = others ? OtherTexts : Texts;
        using var reader = new InscriptionReader(ModelsOfProject.Shelf());
        var errors = new SortedDictionary<string, int>(StringComparer.Ordinal);
        var letters = 0;
        for (var i = 0; i < texts.Length; i++)
        {
            foreach (var (way, wrong) in Errors(reader, texts[i], others ? texts.Length + i : i, lamps))
            {
                errors[way] = errors.GetValueOrDefault(way) + wrong;
            }

            letters += texts[i].Sum(line => line.Length);
        }

        foreach (var (way, wrong) in errors)
        {
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{lamps} lamps, {(others ? "other lettering, " : string.Empty)}{way}: {100.0 * wrong / letters:0.0} % ({wrong} of {letters})"));
        }

        // Which photo of a set is the best, only the truth tells: photos together may come a little short of it.
        Assert.True(errors["2 together"] <= 1.1 * errors["1 best photo"], "photos together read clearly worse than the best of them");
        Assert.True(lamps < 4 || 3 * errors["4 together with grooves"] <= errors["1 best photo"], "with the grooves beside them photos do not read three times better than the best of them");
    }

    private static IEnumerable<(string Way, int Wrong)> Errors(InscriptionReader reader, string[] truth, int set, int lamps)
    {
        var scene = new TubeScene { Width = 760, Height = 420, Focal = 2000, Noise = 3.5, Radius = 15, Distance = 210, Roll = 0.03 * ((set % 3) - 1) };
        var cut = CutLettering.Of(truth, Fonts[set % Fonts.Length], set % 2 == 0 ? 2.4 : 2.0, 0.05, 0.45, 10 * set);
        var tube = UnrollerTests.TubeOf(scene) with { Diameter = PixelLength.FromPixels(2 * scene.Radius * scene.Focal / scene.Distance) };
        var photos = Stands.Take(lamps).Select((stand, i) =>
            (new EngravedTube(scene with { Seed = (100 * set) + i }, []) { Lettering = cut.At, Exposure = 0.8 + (0.2 * (i % 3)), Shine = 0.2 }).Render(EngravedTube.Lamp(stand.Around, stand.Along))).ToList();
        var readings = photos.Select(photo => reader.Run(photo, new Unroller().Run(photo, tube), CancellationToken.None)).ToList();
        yield return ("1 best photo", readings.Min(reading => Wrong(truth, reading)));
        yield return ("1 worst photo", readings.Max(reading => Wrong(truth, reading)));
        var single = readings.Select(reading => new GatheredPhoto(tube, reading)).ToImmutableArray();
        yield return ("2 together", Wrong(truth, new Gatherer().Gather(single, SetKind.Raking)));
        yield return ("2 together, all counting alike", Wrong(truth, new Gatherer(new GathererOptions { Reliability = 0 }).Gather(single, SetKind.Raking)));
        if (new ReliefBuilder().Run(photos, tube, null, null, CancellationToken.None) is not Outcome<SurfaceRelief>.Found found)
        {
            yield return ("9 without relief", truth.Sum(line => line.Length));
            yield break;
        }

        var relief = found.Value;
        foreach (var (name, picture) in new[] { ("grooves", ReliefPictures.Grooves(relief)), ("lit form", ReliefPictures.Lit(relief)) })
        {
            var reading = OnPhoto(reader.Run(photos[0] with { Gray = picture }, new Strip(picture, new FlatStripMap(1), 2 * relief.Map.PixelsPerRadius, true), CancellationToken.None), relief.Map);
            yield return ($"3 {name} alone", Wrong(truth, reading));
            yield return ($"4 together with {name}", Wrong(truth, new Gatherer().Gather([.. single, new GatheredPhoto(tube, reading)], SetKind.Raking)));
        }
    }

    private static Readings.Reading OnPhoto(Readings.Reading reading, CylinderStripMap map)
    {
        Quad Moved(Quad quad) => new(map.ToPhoto(quad.TopLeft), map.ToPhoto(quad.TopRight), map.ToPhoto(quad.BottomRight), map.ToPhoto(quad.BottomLeft));
        return reading with { Lines = [.. reading.Lines.Select(line => line with { Line = line.Line with { InPhoto = Moved(line.Line.InPhoto) }, Letters = [.. line.Letters.Select(letter => letter with { InPhoto = Moved(letter.InPhoto) })] })] };
    }

    /// <summary>Changes that turn what was read into what is cut, spaces left out (Levenshtein).</summary>
    private static int Wrong(string[] truth, Readings.Reading reading)
    {
        var (cut, read) = (string.Concat(truth).Replace(" ", string.Empty, StringComparison.Ordinal), string.Concat(reading.Lines.Select(line => line.Text)).Replace(" ", string.Empty, StringComparison.Ordinal));
        var row = Enumerable.Range(0, read.Length + 1).ToArray();
        for (var i = 1; i <= cut.Length; i++)
        {
            var above = row[0];
            row[0] = i;
            for (var j = 1; j <= read.Length; j++)
            {
                var next = Math.Min(Math.Min(row[j], row[j - 1]) + 1, above + (cut[i - 1] == read[j - 1] ? 0 : 1));
                (above, row[j]) = (row[j], next);
            }
        }

        return row[read.Length];
    }
}

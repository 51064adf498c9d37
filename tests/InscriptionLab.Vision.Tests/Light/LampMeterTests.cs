using System;
using System.Collections.Generic;
using System.Linq;
using InscriptionLab.Advice;
using InscriptionLab.Imaging;
using InscriptionLab.Measures;
using InscriptionLab.Outcomes;
using InscriptionLab.Photos;
using InscriptionLab.Tubes;
using InscriptionLab.Vision.Light;
using InscriptionLab.Vision.Lines;
using InscriptionLab.Vision.Strips;
using InscriptionLab.Vision.Tests.Rendering;
using InscriptionLab.Vision.Tests.Strips;
using OpenCvSharp;
using Xunit;

namespace InscriptionLab.Vision.Tests.Light;

/// <summary>Rendered lettering under one lamp of known side: metal with a highlight, stains, wear, noise.</summary>
public sealed class LampMeterTests(ITestOutputHelper output)
{
    private static readonly TubeScene Scene = new() { Width = 700, Height = 420, Focal = 2000, Noise = 2, Radius = 15, Distance = 210 };

    private static readonly string[] Words = ["Tollivor", "Hathersley", "MARLHAVEN", "Fennimarch"];

    [Fact]
    public void The_side_of_a_raking_lamp_is_told_with_an_uncertainty_that_holds()
    {
        var (errors, within, refused) = (new List<double>(), 0, 0);
        for (var i = 0; i < 24; i++)
        {
            var (side, height) = (15 * i, 14 + (4 * (i % 4)));
            if (Told(Words[i % Words.Length], side, height, i) is not { } lamp)
            {
                refused++;
                continue;
            }

            var error = Math.Abs(Math.IEEERemainder(lamp.Side.Degrees - side, 360));
            errors.Add(error);
            within += error <= 2 * lamp.Uncertainty.Degrees ? 1 : 0;
            output.WriteLine(FormattableString.Invariant($"{side} degrees, {height} high: {lamp.Side.Degrees:0} +- {lamp.Uncertainty.Degrees:0}"));
        }

        errors.Sort();
        output.WriteLine(FormattableString.Invariant($"median {errors[errors.Count / 2]:0}, largest {errors[^1]:0} degrees of {errors.Count}; {refused} not told; {within} within twice the uncertainty"));
        Assert.True(refused <= 4, $"{refused} of 24 are not told");
        Assert.True(errors[errors.Count / 2] < 20, $"median error {errors[errors.Count / 2]} degrees");
        Assert.True(errors.Count(error => error > 60) <= 1, "more than one lamp is on another side than told");
        Assert.True(within >= 0.9 * errors.Count, $"only {within} of {errors.Count} lie within twice the uncertainty");
    }

    [Fact]
    public void Metal_that_mirrors_its_surroundings_tells_no_side()
    {
        // No groove has a lit wall, and two bright lines are mirrored above and below the lettering.
        var photo = Photo("Tollivor", 0, 20, 3);
        var pixels = photo.Gray.Pixels.ToArray();
        var random = new Random(5);
        for (var i = 0; i < pixels.Length; i++)
        {
            var y = (i / Scene.Width) - (Scene.Height / 2.0);
            pixels[i] = (byte)Math.Clamp(90 + (110 * Math.Exp(-Math.Pow((y - 70) / 12, 2))) + (110 * Math.Exp(-Math.Pow((y + 70) / 12, 2))) + (4 * random.NextDouble()), 0, 255);
        }

        var mirrored = photo with { Gray = new GrayImage(Scene.Width, Scene.Height, pixels) };
        var declined = Assert.IsType<Outcome<LampSight>.Declined>(new LampMeter().Measure(mirrored, Tube, ReadingOf(mirrored, 7)));
        Assert.Contains("mirrors", declined.Refusal.Sentence, StringComparison.Ordinal);
        Assert.Contains("dark cloth", declined.Refusal.Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_letters_no_side_is_told() =>
        Assert.IsType<Outcome<LampSight>.Declined>(new LampMeter().Measure(Photo("MARLHAVEN", 0, 20, 3), Tube, new Readings.Reading("none", [], [])));

    [Fact]
    public void The_grooves_alone_tell_a_side_where_no_tube_was_found()
    {
        var photo = Photo("Hathersley", 180, 20, 3);
        var found = Assert.IsType<Outcome<LampSight>.Found>(new LampMeter().Measure(photo, null, ReadingOf(photo, 9)));
        Assert.True(Math.Abs(Math.IEEERemainder(found.Value.Side.Degrees - 180, 360)) < 45, $"{found.Value}");
        Assert.Equal("beyond the start of the line", found.Value.Words);
    }

    private static Tube Tube => UnrollerTests.TubeOf(Scene) with { Diameter = PixelLength.FromPixels(2 * Scene.Radius * Scene.Focal / Scene.Distance) };

    private static LampSight? Told(string word, double side, double height, int seed)
    {
        var photo = Photo(word, side, height, seed);
        return new LampMeter().Measure(photo, Tube, ReadingOf(photo, word.Length)) is Outcome<LampSight>.Found found ? found.Value : null;
    }

    /// <summary>The line runs along the tube's facing generatrix, so the world's axes are its own: X along it, -Y toward the foot, Z outward.</summary>
    private static Photo Photo(string word, double side, double height, int seed)
    {
        var (sinSide, cosSide) = Math.SinCos(side * Math.PI / 180);
        var (sinHeight, cosHeight) = Math.SinCos(height * Math.PI / 180);
        var lettering = CutLettering.Of([word], seed % 2 == 0 ? HersheyFonts.HersheyTriplex : HersheyFonts.HersheyComplex, 2.8, 0.07, 0.2, seed);
        return new EngravedTube(Scene with { Seed = seed }, []) { Lettering = lettering.At, Exposure = 1.3, Shine = 0.3 }.Render(new Vector3D(cosSide * cosHeight, -sinSide * cosHeight, sinHeight));
    }

    /// <summary>The line as the reader would have cut it out; letters do not matter here.</summary>
    private static Readings.Reading ReadingOf(Photo photo, int letters)
    {
        var strip = new Unroller().Run(photo, Tube);
        var scale = strip.PixelsPerDiameter / (2 * Scene.Radius);
        var half = letters * 1.2 * scale;
        PixelPoint At(double along) => new(((strip.Image.Width - 1) / 2.0) + along, (strip.Image.Height - 1) / 2.0);
        var line = new LineCropper(new LineCropOptions()).Cut(photo, strip, new LineTrace(At(-half), At(half), 0, 2.8 * scale, 1), false, Probability.One);
        return new Readings.Reading("scene", [new Readings.LineReading(line, [], Probability.One, null)], []);
    }
}

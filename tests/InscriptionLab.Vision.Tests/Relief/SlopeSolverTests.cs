using System;
using System.Collections.Generic;
using System.Linq;
using System.Threading;
using InscriptionLab.Imaging;
using InscriptionLab.Measures;
using InscriptionLab.Reliefs;
using InscriptionLab.Strips;
using InscriptionLab.Vision.Relief;
using InscriptionLab.Vision.Tests.Rendering;
using InscriptionLab.Vision.Tests.Tubes;
using Xunit;

namespace InscriptionLab.Vision.Tests.Relief;

/// <summary>Levels worked out from slopes of a few degrees under three lamps along the tube, with a little noise: what burns out must not decide whether shading explains them.</summary>
public sealed class SlopeSolverTests
{
    private const int Width = 200;
    private const int Height = 60;
    private const double Scale = 300;

    private static readonly Lamp[] Lamps = [Along(-60), Along(5), Along(60)];

    private static readonly CylinderStripMap Map = new(CylinderPoseTests.PoseOf(new TubeScene()), Scale, 0, Angle.FromRadians(-Height / Scale / 2));

    [Fact]
    public void One_burnt_pixel_of_a_hundred_does_not_change_how_much_the_shading_explains()
    {
        var whole = Explained((_, _) => false);
        var burnt = Explained((photo, at) => photo == at % 3 && at % 100 == 0);

        Assert.InRange(whole, 0.9, 1);
        Assert.Equal(whole, burnt, 0.01);
    }

    [Fact]
    public void A_pixel_that_one_photo_alone_shows_says_nothing()
    {
        var whole = Explained((_, _) => false);

        Assert.Equal(whole, Explained((photo, at) => photo > 0 && at % 20 == 0), 0.01);
        Assert.Equal(0, Explained((photo, _) => photo > 0));
    }

    private static double Explained(Func<int, int, bool> isBurnt)
    {
        var random = new Random(5);
        List<FlatLight> photos = [.. Lamps.Select((lamp, photo) => Light(lamp, photo, isBurnt, random))];
        var options = new ReliefOptions();
        var solver = new SlopeSolver(options);
        var spread = LampSpread.Of(Lamps, default, options.LeastLit);
        var slopes = solver.OneDirection(photos, Map, Lamps, spread, CancellationToken.None);
        return solver.Explained(photos, Map, Lamps, spread, slopes, default);
    }

    private static FlatLight Light(Lamp lamp, int photo, Func<int, int, bool> isBurnt, Random random)
    {
        var pixels = new byte[Width * Height];
        Array.Fill(pixels, (byte)100);
        var light = FlatLight.Of(new Strip(new GrayImage(Width, Height, pixels), Map, 2 * Scale, true), new ReliefOptions());
        for (var at = 0; at < pixels.Length; at++)
        {
            var towards = lamp.At(Map.ToSurface(new PixelPoint(0, at / Width)).Around);
            var slope = 0.08 * Math.Sin(at % Width / 4.0);
            var noise = 0.02 * (random.NextDouble() - 0.5);
            light.Over[at] = isBurnt(photo, at) ? -1 : (float)(1 - (slope * towards.X / towards.Z) + noise);
        }

        return light;
    }

    private static Lamp Along(double degrees) => new(default, Angle.FromDegrees(degrees));
}

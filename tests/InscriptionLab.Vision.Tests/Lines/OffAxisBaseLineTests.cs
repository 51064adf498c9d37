using System;
using System.Threading;
using InscriptionLab.Measures;
using InscriptionLab.Vision.Reading;
using InscriptionLab.Vision.Strips;
using InscriptionLab.Vision.Tests.Rendering;
using InscriptionLab.Vision.Tests.Strips;
using InscriptionLab.Vision.Tests.Tubes;
using OpenCvSharp;
using Xunit;

namespace InscriptionLab.Vision.Tests.Lines;

/// <summary>Hand engraving runs off the axis: a base line that is a screw line round the tube, or bowed, is followed and reads as a straight one does.</summary>
public sealed class OffAxisBaseLineTests
{
    private const string Cut = "TOLLIVOR & SON";

    /// <summary>Widest part by which the line's measured direction may be off: a third of the letters' height over the length of the line.</summary>
    private const double DegreesOff = 1.5;

    [Theory]
    [InlineData(0, 0)]
    [InlineData(-9, 0)]
    [InlineData(5, 0)]
    [InlineData(12, 0)]
    [InlineData(0, 0.0035)]
    [InlineData(-6, -0.0035)]
    public void A_base_line_off_the_axis_is_followed_and_read(double degrees, double bow)
    {
        var scene = new TubeScene { Width = 900, Height = 420, Focal = 2000, Noise = 2, Radius = 15, Distance = 210, Roll = 0.05 };
        var tube = UnrollerTests.TubeOf(scene) with { Diameter = PixelLength.FromPixels(2 * scene.Radius * scene.Focal / scene.Distance) };
        var photo = new EngravedTube(scene, [])
        {
            Lettering = CutLettering.Of([Cut], HersheyFonts.HersheyTriplex, 3, 0.12, 0.1, 4).At,
            LetteringTurn = degrees * Math.PI / 180,
            LetteringBow = bow,
        }.Render(EngravedTube.Lamp(-50, 35));
        using var reader = new InscriptionReader(ModelsOfProject.Shelf());

        var line = Assert.Single(reader.Run(photo, new Unroller().Run(photo, tube), CancellationToken.None).Lines);

        Assert.Equal(Cut, line.Text, ignoreCase: true);
        var (first, last) = (line.Letters[0].InPhoto.Centre, line.Letters[^1].InPhoto.Centre);
        var strip = new Unroller().Run(photo, tube).Map;
        var (from, to) = (strip.ToStrip(first)!.Value, strip.ToStrip(last)!.Value);
        Assert.Equal(degrees, Math.Atan2(to.Y - from.Y, to.X - from.X) * 180 / Math.PI, DegreesOff);
    }
}

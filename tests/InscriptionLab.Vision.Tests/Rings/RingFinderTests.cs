using System;
using System.Linq;
using System.Threading;
using InscriptionLab.Imaging;
using InscriptionLab.Measures;
using InscriptionLab.Outcomes;
using InscriptionLab.Photos;
using InscriptionLab.Strips;
using InscriptionLab.Vision.Rings;
using InscriptionLab.Vision.Tests.Cells;
using InscriptionLab.Vision.Tests.Rendering;
using Xunit;

namespace InscriptionLab.Vision.Tests.Rings;

public sealed class RingFinderTests
{
    /// <summary>Share of the radius by which a rim may be off: its bevel is a fiftieth wide.</summary>
    private const double BevelOff = 0.025;

    [Theory]
    [InlineData(0, 0.6, true)]
    [InlineData(12, 0.68, false)]
    [InlineData(24, 0.58, true)]
    public void Rim_and_opening_are_found(double tilt, double inner, bool lettered)
    {
        var ring = Small(tilt, inner, lettered);
        var face = Found(new RingFinder().Run(ring.Draw(), CancellationToken.None));

        Assert.False(face.Marked);
        Assert.All(Enumerable.Range(0, 36), i => Assert.Equal(1, face.Plane.ToPlane(ring.Scene.Project(1, i * Math.Tau / 36))!.Value.Radius, BevelOff));

        // The plate below the opening may be taken along, the face never cut short.
        Assert.InRange(face.Plane.InnerRadius, inner - 0.08, inner + 0.025);
    }

    [Fact]
    public void A_closed_cap_is_looked_at_from_its_rim_inward_and_says_so()
    {
        var ring = Small(10, 0.6, true) with { Closed = true };
        var face = Found(new RingFinder().Run(ring.Draw(), CancellationToken.None));

        Assert.Equal(new RingFinderOptions().ClosedFace, face.Plane.InnerRadius, 1e-9);
        Assert.Contains("No opening", Assert.Single(face.Notes), StringComparison.Ordinal);
    }

    [Fact]
    public void A_photo_without_a_ring_is_declined_with_a_sentence_and_a_remedy()
    {
        var table = new RenderedCell { CellPresent = false, Scale = null, Width = 480, Height = 360 }.Draw();
        var declined = Assert.IsType<Outcome<RingFace>.Declined>(new RingFinder().Run(table, CancellationToken.None));

        Assert.Contains("No ring", declined.Refusal.Sentence, StringComparison.Ordinal);
        Assert.Contains("rim", declined.Refusal.Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void A_photo_turned_by_a_right_angle_has_its_ring_turned_too()
    {
        var photo = Small(15, 0.62, true).Draw();
        var here = Found(new RingFinder().Run(photo, CancellationToken.None)).Outer;
        var there = Found(new RingFinder().Run(Turned(photo), CancellationToken.None)).Outer;

        var centre = new PixelPoint(photo.Gray.Height - 1 - here.Centre.Y, here.Centre.X);
        Assert.True(there.Centre.DistanceTo(centre).Pixels < 1.5);
        Assert.Equal(here.SemiMajor.Pixels, there.SemiMajor.Pixels, 1.5);
        Assert.Equal(here.SemiMinor.Pixels, there.SemiMinor.Pixels, 1.5);
    }

    [Fact]
    public void A_marked_rim_is_taken_as_marked_and_one_beside_the_photo_is_declined()
    {
        var photo = Small(0, 0.6, false).Draw();
        var rim = new PixelEllipse(new PixelPoint(300, 240), PixelLength.FromPixels(180), PixelLength.FromPixels(170), Angle.FromDegrees(20));

        var face = Found(new RingFinder().Run(photo, rim, 0.6));
        Assert.True(face.Marked);
        Assert.Equal(rim, face.Outer);
        Assert.Equal(0.6, face.Plane.InnerRadius, 1e-9);

        var beside = new RingFinder().Run(photo, rim with { Centre = new PixelPoint(900, 240) }, null);
        Assert.Contains("600 x 480", Assert.IsType<Outcome<RingFace>.Declined>(beside).Refusal.Sentence, StringComparison.Ordinal);
    }

    private static EngravedRing Small(double tiltDegrees, double inner, bool lettered) => new(
        new RingScene { Tilt = tiltDegrees * Math.PI / 180, Turn = 0.7, Inner = inner, Focal = 900, Distance = 4.7, CentreX = 297, CentreY = 244 },
        lettered ? [new RingText("Tollivor & Son", RingCases.Roman, 0.09, 0.4, TopsOutward: true)] : [])
    {
        Width = 600,
        Height = 480,
    };

    private static RingFace Found(Outcome<RingFace> outcome) => Assert.IsType<Outcome<RingFace>.Found>(outcome).Value;

    private static Photo Turned(Photo photo)
    {
        var (width, height) = (photo.Gray.Height, photo.Gray.Width);
        var (gray, colour) = (new byte[width * height], new byte[width * height * ColourImage.Channels]);
        for (var i = 0; i < gray.Length; i++)
        {
            // What stands at (x, y) comes from (y, width - 1 - x): a turn clockwise.
            var from = ((width - 1 - (i % width)) * height) + (i / width);
            gray[i] = photo.Gray.Pixels[from];
            for (var channel = 0; channel < ColourImage.Channels; channel++)
            {
                colour[(i * ColourImage.Channels) + channel] = photo.Colour.Pixels[(from * ColourImage.Channels) + channel];
            }
        }

        return photo with { Gray = new GrayImage(width, height, gray), Colour = new ColourImage(width, height, colour) };
    }
}

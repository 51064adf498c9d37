using System;
using System.Collections.Immutable;
using InscriptionLab.Imaging;
using InscriptionLab.Measures;
using InscriptionLab.Strips;
using InscriptionLab.Tubes;
using InscriptionLab.Vision.Strips;
using InscriptionLab.Vision.Tests.Rendering;
using InscriptionLab.Vision.Tests.Tubes;
using Xunit;

namespace InscriptionLab.Vision.Tests.Strips;

public sealed class UnrollerTests
{
    private const double PaintScale = 12;

    /// <summary>Dots every 4 mm on the tube, found again in the strip by their centre of darkness: positions must be those painted.</summary>
    [Theory]
    [InlineData(0.0, 0.0)]
    [InlineData(0.35, 0.3)]
    [InlineData(-0.3, -2.0)]
    public void Dots_painted_on_the_tube_lie_in_the_strip_where_they_were_painted(double tilt, double roll)
    {
        var scene = new TubeScene { Tilt = tilt, Roll = roll, Paint = Dots(), PaintPixelsPerMillimetre = PaintScale, Shaded = false, Noise = 1, Start = -60, End = 60 };
        var photo = TubeRenderer.Render(scene);
        var tube = TubeOf(scene);
        var strip = new Unroller().Run(photo, tube);
        var map = Assert.IsType<CylinderStripMap>(strip.Map);
        double sum = 0;
        var count = 0;
        for (var i = -4; i <= 4; i++)
        {
            for (var j = -3; j <= 3; j++)
            {
                var around = j * 4 / scene.Radius;
                var expected = map.ToStrip(scene.Project(scene.SurfaceAt(i * 4, around)));
                Assert.NotNull(expected);
                if (Math.Abs(around) > Math.PI / 4 || expected.Value.X < 20 || expected.Value.X > strip.Image.Width - 20)
                {
                    continue;
                }

                var found = CentreOfDarkness(strip.Image, expected.Value, map.PixelsPerRadius * 1.4 / scene.Radius);
                sum += Math.Pow(found.DistanceTo(expected.Value).Pixels, 2);
                count++;
            }
        }

        // 0.3 % of the 90 degrees of arc looked at.
        var tolerance = 0.003 * map.PixelsPerRadius * Math.PI / 2;
        Assert.True(count >= 30, $"only {count} dots");
        Assert.True(Math.Sqrt(sum / count) < tolerance, $"{Math.Sqrt(sum / count):0.00} px, allowed {tolerance:0.00}");
    }

    [Fact]
    public void The_strip_is_as_fine_as_the_photo_where_the_tube_faces_the_camera()
    {
        var scene = new TubeScene { Tilt = 0.2 };
        var strip = new Unroller().Run(TubeRenderer.Render(scene), TubeOf(scene));
        var map = Assert.IsType<CylinderStripMap>(strip.Map);
        for (var x = 0; x < strip.Image.Width; x += 50)
        {
            var at = new PixelPoint(x, map.FromSurface(default).Y);
            Assert.True(map.ToPhoto(at).DistanceTo(map.ToPhoto(at with { X = x + 1 })).Pixels <= 1.0001);
            Assert.True(map.ToPhoto(at).DistanceTo(map.ToPhoto(at with { Y = at.Y + 1 })).Pixels <= 1.0001);
        }
    }

    [Fact]
    public void A_photo_without_a_tube_is_its_own_strip()
    {
        var photo = TubeRenderer.Render(new TubeScene { Width = 60, Height = 40, Distance = 4000 });
        var strip = new Unroller().Flat(photo);
        Assert.False(strip.Unrolled);
        Assert.Equal(photo.Gray.Pixels.ToArray(), strip.Image.Pixels.ToArray());
    }

    internal static Tube TubeOf(TubeScene scene)
    {
        var axis = scene.Axis(-30, 30);
        return new Tube(
            axis,
            [scene.Silhouette(false, -30, 30), scene.Silhouette(true, -30, 30)],
            PixelLength.FromPixels(1),
            CylinderPoseTests.PoseOf(scene),
            Probability.One,
            ImmutableArray<string>.Empty);
    }

    private static GrayImage Dots()
    {
        const int Side = 1300;
        var pixels = new byte[Side * Side];
        for (var y = 0; y < Side; y++)
        {
            for (var x = 0; x < Side; x++)
            {
                var across = Math.IEEERemainder((x - ((Side - 1) / 2.0)) / PaintScale, 4);
                var around = Math.IEEERemainder((y - ((Side - 1) / 2.0)) / PaintScale, 4);
                pixels[(y * Side) + x] = (byte)(Math.Sqrt((across * across) + (around * around)) < 0.7 ? 30 : 200);
            }
        }

        return new GrayImage(Side, Side, pixels);
    }

    private static PixelPoint CentreOfDarkness(GrayImage image, PixelPoint near, double radius)
    {
        double sum = 0;
        double sumX = 0;
        double sumY = 0;
        for (var y = (int)(near.Y - radius); y <= near.Y + radius; y++)
        {
            for (var x = (int)(near.X - radius); x <= near.X + radius; x++)
            {
                var weight = Math.Max(0, 180.0 - image[x, y]);
                sum += weight;
                sumX += weight * x;
                sumY += weight * y;
            }
        }

        return new PixelPoint(sumX / sum, sumY / sum);
    }
}

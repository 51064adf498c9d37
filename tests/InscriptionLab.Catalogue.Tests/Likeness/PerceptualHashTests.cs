using System;
using System.Linq;
using InscriptionLab.Imaging;
using InscriptionLab.Likeness;
using Xunit;

namespace InscriptionLab.Catalogue.Tests.Likeness;

public sealed class PerceptualHashTests
{
    private const int Side = 256;

    [Fact]
    public void A_picture_made_smaller_brighter_and_noisy_keeps_its_hash_nearly()
    {
        for (var seed = 0; seed < 20; seed++)
        {
            var picture = Blobs(seed, Side);
            var random = new Random(seed);
            var noisy = new GrayImage(Side, Side, [.. picture.Pixels.ToArray().Select(level => (byte)Math.Clamp((level * 0.8) + 40 + random.Next(-12, 13), 0, 255))]);

            Assert.InRange(PerceptualHash.Distance(PerceptualHash.Of(picture), PerceptualHash.Of(noisy)), 0, 6);
            Assert.InRange(PerceptualHash.Distance(PerceptualHash.Of(picture), PerceptualHash.Of(Blobs(seed, Side / 2))), 0, 6);
        }
    }

    [Fact]
    public void Unlike_pictures_differ_in_many_bits()
    {
        var hashes = Enumerable.Range(0, 40).Select(seed => PerceptualHash.Of(Blobs(seed, Side))).ToList();
        var distances = hashes.SelectMany((left, index) => hashes.Skip(index + 1).Select(right => PerceptualHash.Distance(left, right))).ToList();

        Assert.True(distances.Min() > 6);
        Assert.InRange(distances.Average(), 24, 40);
    }

    /// <summary>Draws soft blobs; the same seed gives the same picture at any size.</summary>
    private static GrayImage Blobs(int seed, int side)
    {
        var random = new Random(seed);
        var blobs = Enumerable.Range(0, 25).Select(_ => (X: random.NextDouble(), Y: random.NextDouble(), Level: (random.NextDouble() * 160) - 80, Width: 0.03 + (random.NextDouble() * 0.15))).ToList();
        var pixels = new byte[side * side];
        for (var index = 0; index < pixels.Length; index++)
        {
            var (x, y) = (((index % side) + 0.5) / side, ((index / side) + 0.5) / side);
            var level = 128 + blobs.Sum(blob => blob.Level * Math.Exp(-(((x - blob.X) * (x - blob.X)) + ((y - blob.Y) * (y - blob.Y))) / (2 * blob.Width * blob.Width)));
            pixels[index] = (byte)Math.Clamp(level, 0, 255);
        }

        return new GrayImage(side, side, pixels);
    }
}

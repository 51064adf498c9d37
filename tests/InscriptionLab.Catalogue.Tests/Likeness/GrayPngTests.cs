using System;
using CsCheck;
using InscriptionLab.Imaging;
using InscriptionLab.Likeness;
using InscriptionLab.Outcomes;
using Xunit;

namespace InscriptionLab.Catalogue.Tests.Likeness;

public sealed class GrayPngTests
{
    [Fact]
    public void A_picture_comes_back_as_it_went_in() =>
        Gen.Select(Gen.Int[1, 40], Gen.Int[1, 40]).SelectMany((width, height) => Gen.Byte.Array[width * height].Select(pixels => new GrayImage(width, height, pixels)))
            .Sample(image =>
            {
                var back = GrayPng.Read(GrayPng.Write(image));
                return back.Width == image.Width && back.Height == image.Height && back.Pixels.SequenceEqual(image.Pixels);
            });

    [Fact]
    public void Damage_at_any_place_is_noticed()
    {
        var random = new Random(7);
        var pixels = new byte[30 * 20];
        random.NextBytes(pixels);
        var png = GrayPng.Write(new GrayImage(30, 20, pixels));

        for (var place = 0; place < png.Length; place++)
        {
            var damaged = (byte[])png.Clone();
            damaged[place] ^= 0x10;
            Assert.Throws<InscriptionLabException>(() => GrayPng.Read(damaged));
        }
    }
}

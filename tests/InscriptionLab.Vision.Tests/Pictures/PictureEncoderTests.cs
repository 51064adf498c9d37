using System;
using InscriptionLab.Imaging;
using InscriptionLab.Outcomes;
using InscriptionLab.Vision.Pictures;
using Xunit;

namespace InscriptionLab.Vision.Tests.Pictures;

public sealed class PictureEncoderTests
{
    /// <summary>A JPEG holds less than 65536 pixels a side (ITU-T T.81, B.2.2: 16 bits for lines and samples; from memory).</summary>
    [Fact]
    public void A_picture_too_long_for_its_kind_of_file_is_refused_with_a_sentence()
    {
        var refused = Assert.Throws<InscriptionLabException>(() => PictureEncoder.ToJpeg(new GrayImage(66_000, 2, new byte[132_000])));
        Assert.Contains("66000 x 2", refused.Message, StringComparison.Ordinal);
    }
}

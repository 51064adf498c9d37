using System.Linq;
using InscriptionLab.Imaging;
using InscriptionLab.Lines;
using InscriptionLab.Measures;
using InscriptionLab.Strips;
using InscriptionLab.Vision.Native;
using InscriptionLab.Vision.Reading;
using OpenCvSharp;
using Xunit;

namespace InscriptionLab.Vision.Tests.Reading;

public sealed class TesseractReaderTests
{
    [Fact]
    public void Printed_words_are_read_with_boxes_in_order()
    {
        using var reader = TesseractReader.TryStart(null, out var reason);
        Assert.SkipWhen(reader is null, reason);
        var reading = reader!.Read([Printed("HARBOUR 1785")], TestContext.Current.CancellationToken).Single();

        Assert.Equal("HARBOUR 1785", reading.Text);
        Assert.All(reading.Letters.Zip(reading.Letters.Skip(1)), pair => Assert.True(pair.First.InCrop.TopLeft.X <= pair.Second.InCrop.TopLeft.X));
    }

    [Fact]
    public void A_missing_model_is_said_in_one_sentence_and_not_a_crash()
    {
        Assert.SkipUnless(NativeLoadOrder.TesseractPresent, "Tesseract is not installed.");
        using var reader = TesseractReader.TryStart(new TesseractReaderOptions { Models = ["no-such-model"] }, out var reason);

        Assert.Null(reader);
        Assert.Contains("no-such-model", reason, System.StringComparison.Ordinal);
    }

    internal static LetteringLine Printed(string text)
    {
        var ground = new byte[64 * 480];
        System.Array.Fill(ground, (byte)225);
        using var picture = NativeImage.View(new GrayImage(480, 64, ground));
        Cv2.PutText(picture.Mat, text, new Point(30, 46), HersheyFonts.HersheyComplex, 1.4, Scalar.All(20), 2, LineTypes.AntiAlias);
        return new LetteringLine(picture.ToGray(), new FlatStripMap(1), default, default, new LineDirection(default, false, false), PixelLength.FromPixels(48), Probability.One);
    }
}

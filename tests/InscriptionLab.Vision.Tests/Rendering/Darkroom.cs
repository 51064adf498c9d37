using System;
using InscriptionLab.Imaging;
using InscriptionLab.Photos;
using OpenCvSharp;

namespace InscriptionLab.Vision.Tests.Rendering;

/// <summary>From light to a photo as a phone saves it: blur, noise that grows with the root of light, sRGB (IEC 61966-2-1), JPEG.</summary>
internal static class Darkroom
{
    /// <summary>Develops a picture in linear light, three channels a pixel, blue first.</summary>
    internal static Photo Develop(float[] pixels, int width, int height, double blurPixels, double noise, int seed, int jpegQuality)
    {
        using var light = Mat.FromPixelData(height, width, MatType.CV_32FC3, pixels);
        using var blurred = new Mat();
        if (blurPixels > 0)
        {
            Cv2.GaussianBlur(light, blurred, new Size(0, 0), blurPixels);
        }
        else
        {
            light.CopyTo(blurred);
        }

        blurred.GetArray(out Vec3f[] values);
        var random = new Random(seed);
        var bytes = new byte[values.Length * 3];
        for (var i = 0; i < values.Length; i++)
        {
            for (var c = 0; c < 3; c++)
            {
                var sigma = noise * Math.Sqrt(Math.Max(0.01, values[i][c]));
                var normal = Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(Math.Tau * random.NextDouble());
                bytes[(3 * i) + c] = ToSrgb(values[i][c] + (sigma * normal));
            }
        }

        using var colour = Mat.FromPixelData(height, width, MatType.CV_8UC3, bytes);
        Cv2.ImEncode(".jpg", colour, out var file, new ImageEncodingParam(ImwriteFlags.JpegQuality, jpegQuality));
        using var decoded = Cv2.ImDecode(file, ImreadModes.Color);
        using var grey = new Mat();
        Cv2.CvtColor(decoded, grey, ColorConversionCodes.BGR2GRAY);
        decoded.GetArray(out Vec3b[] back);
        var flat = new byte[back.Length * 3];
        for (var i = 0; i < back.Length; i++)
        {
            (flat[3 * i], flat[(3 * i) + 1], flat[(3 * i) + 2]) = (back[i].Item0, back[i].Item1, back[i].Item2);
        }

        grey.GetArray(out byte[] greys);
        return new Photo("drawn.jpg", new string('0', 64), new ColourImage(width, height, flat), new GrayImage(width, height, greys), LensFacts.Unknown, new PhotoQuality(0, 0, 0));
    }

    private static byte ToSrgb(double light)
    {
        var v = Math.Clamp(light, 0, 1);
        var s = v <= 0.0031308 ? 12.92 * v : (1.055 * Math.Pow(v, 1 / 2.4)) - 0.055;
        return (byte)Math.Clamp(Math.Round(s * 255), 0, 255);
    }
}

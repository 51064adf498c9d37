using System;
using System.Collections.Generic;
using System.Linq;
using InscriptionLab.Imaging;
using InscriptionLab.Measures;
using InscriptionLab.Vision.Native;
using OpenCvSharp;

namespace InscriptionLab.Vision.Scales;

/// <summary>Finds points round which the light goes bright, dark, bright, dark: the corners of a checkerboard.</summary>
internal static class SaddleFinder
{
    /// <summary>Blur before second derivatives, in pixels: of the order of the corner's own blur.</summary>
    private const double Blur = 1.5;

    /// <summary>Half side of the neighbourhood in which a saddle must be the strongest, in pixels.</summary>
    private const int Neighbourhood = 4;

    /// <summary>Saddles below this share of the strongest saddle are not looked at.</summary>
    private const double SmallestShare = 0.03;

    /// <summary>Share of the alternating light round a corner that its second harmonic must carry: 8/π² = 0.81 for a perfect crossing of two lines.</summary>
    private const double SmallestHarmonicShare = 0.62;

    /// <summary>Least amplitude of the second harmonic, in grey levels.</summary>
    private const double SmallestAmplitude = 12;

    private const int RingSamples = 32;
    private static readonly double[] RingRadii = [4, 6];

    /// <summary>Finds saddle points, strongest first.</summary>
    internal static List<SaddlePoint> Find(GrayImage image)
    {
        using var native = NativeImage.View(image);
        using var smooth = native.Apply((from, to) =>
        {
            from.ConvertTo(to, MatType.CV_32FC1);
            Cv2.GaussianBlur(to, to, new Size(0, 0), Blur);
        });
        var light = Floats(smooth);
        var response = Response(smooth);
        var (width, height) = (image.Width, image.Height);
        var strongest = response.Length == 0 ? 0 : response.Max();
        var found = new List<SaddlePoint>();
        var margin = (int)RingRadii.Max() + 2;
        for (var y = margin; y < height - margin; y++)
        {
            for (var x = margin; x < width - margin; x++)
            {
                var value = response[(y * width) + x];
                if (value > SmallestShare * strongest && IsPeak(response, width, x, y) && Ring(light, width, x, y) is { } saddle)
                {
                    found.Add(saddle);
                }
            }
        }

        found.Sort((a, b) => b.Strength.CompareTo(a.Strength));
        return found;
    }

    private static float[] Response(NativeImage smooth)
    {
        using var xx = smooth.Apply((from, to) => Cv2.Sobel(from, to, MatType.CV_32F, 2, 0));
        using var yy = smooth.Apply((from, to) => Cv2.Sobel(from, to, MatType.CV_32F, 0, 2));
        using var xy = smooth.Apply((from, to) => Cv2.Sobel(from, to, MatType.CV_32F, 1, 1));
        var (a, b, c) = (Floats(xx), Floats(yy), Floats(xy));
        var response = new float[a.Length];
        for (var i = 0; i < response.Length; i++)
        {
            response[i] = Math.Max(0, (c[i] * c[i]) - (a[i] * b[i]));
        }

        return response;
    }

    private static bool IsPeak(float[] response, int width, int x, int y)
    {
        var value = response[(y * width) + x];
        for (var dy = -Neighbourhood; dy <= Neighbourhood; dy++)
        {
            for (var dx = -Neighbourhood; dx <= Neighbourhood; dx++)
            {
                var other = response[((y + dy) * width) + x + dx];
                if (other > value || (other == value && (dy < 0 || (dy == 0 && dx < 0))))
                {
                    return false;
                }
            }
        }

        return true;
    }

    private static SaddlePoint? Ring(float[] light, int width, int x, int y)
    {
        var (cos2, sin2, least) = (0.0, 0.0, double.PositiveInfinity);
        foreach (var radius in RingRadii)
        {
            var (mean, square, c, s) = (0.0, 0.0, 0.0, 0.0);
            for (var i = 0; i < RingSamples; i++)
            {
                var angle = i * Math.Tau / RingSamples;
                var value = light[((int)Math.Round(y + (radius * Math.Sin(angle))) * width) + (int)Math.Round(x + (radius * Math.Cos(angle)))];
                mean += value / RingSamples;
                square += value * value / RingSamples;
                c += 2 * value * Math.Cos(2 * angle) / RingSamples;
                s += 2 * value * Math.Sin(2 * angle) / RingSamples;
            }

            var variance = square - (mean * mean);
            var amplitude = Math.Sqrt((c * c) + (s * s));
            if (amplitude < SmallestAmplitude || amplitude * amplitude / 2 < SmallestHarmonicShare * variance)
            {
                return null;
            }

            cos2 += c;
            sin2 += s;
            least = Math.Min(least, amplitude);
        }

        var bright = Math.Atan2(sin2, cos2) / 2;
        return new SaddlePoint(new PixelPoint(x, y), least, bright < 0 ? bright + Math.PI : bright);
    }

    private static float[] Floats(NativeImage image)
    {
        image.Mat.GetArray(out float[] values);
        return values;
    }
}

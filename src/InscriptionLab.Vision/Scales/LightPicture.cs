using System;
using InscriptionLab.Imaging;

namespace InscriptionLab.Vision.Scales;

/// <summary>A picture in linear light, 0 to 1, in which blur is a plain average and edges therefore stay where they are.</summary>
internal sealed class LightPicture
{
    private readonly float[] _light;

    private LightPicture(int width, int height, float[] light)
    {
        Width = width;
        Height = height;
        _light = light;
    }

    internal int Width { get; }

    internal int Height { get; }

    /// <summary>Makes the picture of grey levels.</summary>
    internal static LightPicture From(GrayImage image)
    {
        var pixels = image.Pixels;
        var linear = SrgbLight.OfLevels;
        var light = new float[pixels.Length];
        for (var i = 0; i < light.Length; i++)
        {
            light[i] = linear[pixels[i]];
        }

        return new LightPicture(image.Width, image.Height, light);
    }

    /// <summary>Makes a weighted sum of the linear blue, green and red light.</summary>
    internal static LightPicture From(ColourImage image, double blue, double green, double red)
    {
        var pixels = image.Pixels;
        var linear = SrgbLight.OfLevels;
        var light = new float[image.Width * image.Height];
        for (var i = 0; i < light.Length; i++)
        {
            var at = ColourImage.Channels * i;
            light[i] = (float)((blue * linear[pixels[at]]) + (green * linear[pixels[at + 1]]) + (red * linear[pixels[at + 2]]));
        }

        return new LightPicture(image.Width, image.Height, light);
    }

    internal bool Holds(double x, double y, double margin) =>
        x >= margin && y >= margin && x <= Width - 1 - margin && y <= Height - 1 - margin;

    /// <summary>Gives the light at a point by bilinear interpolation; points outside take the border's light.</summary>
    internal double At(double x, double y)
    {
        x = Math.Clamp(x, 0, Width - 1.001);
        y = Math.Clamp(y, 0, Height - 1.001);
        var (column, row) = ((int)x, (int)y);
        var (fx, fy) = (x - column, y - row);
        var at = (row * Width) + column;
        var upper = _light[at] + (fx * (_light[at + 1] - _light[at]));
        var lower = _light[at + Width] + (fx * (_light[at + Width + 1] - _light[at + Width]));
        return upper + (fy * (lower - upper));
    }
}

using System;
using InscriptionLab.Imaging;

namespace InscriptionLab.Vision.Tubes;

/// <summary>A photo in full size, looked at with its sRGB coding undone: blur mixes light, so the middle of a blurred edge is half way in light, not in coded levels. Only what is asked for is decoded.</summary>
/// <param name="picture">The photo.</param>
internal sealed class LinearLight(ColourImage picture)
{
    /// <summary>Adds the light at a point, between its four pixels in proportion.</summary>
    /// <param name="x">Place in photo pixels.</param>
    /// <param name="y">Place in photo pixels.</param>
    /// <param name="sum">Blue, green and red, 0 to 1 each, to which is added.</param>
    /// <returns>False where the point lies outside the photo; nothing is added then.</returns>
    internal bool AddTo(double x, double y, Span<float> sum)
    {
        var (left, top) = ((int)Math.Floor(x), (int)Math.Floor(y));
        if (left < 0 || top < 0 || left + 1 >= picture.Width || top + 1 >= picture.Height)
        {
            return false;
        }

        var (right, down) = ((float)(x - left), (float)(y - top));
        var stride = picture.Width * ColourImage.Channels;
        var above = picture.Pixels.Slice((top * stride) + (left * ColourImage.Channels), 2 * ColourImage.Channels);
        var below = picture.Pixels.Slice(((top + 1) * stride) + (left * ColourImage.Channels), 2 * ColourImage.Channels);
        var light = SrgbLight.OfLevels;
        for (var channel = 0; channel < ColourImage.Channels; channel++)
        {
            var upper = Between(light[above[channel]], light[above[channel + ColourImage.Channels]], right);
            var lower = Between(light[below[channel]], light[below[channel + ColourImage.Channels]], right);
            sum[channel] += Between(upper, lower, down);
        }

        return true;
    }

    private static float Between(float one, float other, float share) => one + ((other - one) * share);
}

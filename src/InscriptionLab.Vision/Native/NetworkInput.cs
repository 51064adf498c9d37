using System;

namespace InscriptionLab.Vision.Native;

/// <summary>Grey levels as the networks take them.</summary>
internal static class NetworkInput
{
    /// <summary>Gives (grey / 255 - 0.5) / 0.5 of each pixel, -1 for black to 1 for white.</summary>
    internal static float[] Of(ReadOnlySpan<byte> pixels)
    {
        var numbers = new float[pixels.Length];
        Fill(pixels, numbers);
        return numbers;
    }

    /// <summary>Fills part of a batch.</summary>
    internal static void Fill(ReadOnlySpan<byte> pixels, Span<float> target)
    {
        for (var index = 0; index < pixels.Length; index++)
        {
            target[index] = (pixels[index] / 127.5f) - 1;
        }
    }
}

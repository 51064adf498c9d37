using System;

namespace InscriptionLab.Likeness;

/// <summary>Strength and direction of the strokes at each pixel of a normalised line; dark and bright strokes count alike.</summary>
internal sealed class StrokeField
{
    /// <summary>Share of the strongest edges' level under which an edge counts as the metal's texture.</summary>
    private const double TextureShare = 0.25;

    /// <summary>Where the strong edges' level is taken: the 95th percentile of all pixels.</summary>
    private const double StrongPercentile = 0.95;

    private readonly float[] _strength;
    private readonly float[] _angle;
    private readonly int _directions;

    internal StrokeField(float[] pixels, int width, int height, int directions)
    {
        Width = width;
        Height = height;
        _directions = directions;
        _strength = new float[width * height];
        _angle = new float[width * height];
        for (var y = 1; y < height - 1; y++)
        {
            for (var x = 1; x < width - 1; x++)
            {
                Fill(pixels, x, y);
            }
        }

        Threshold();
    }

    internal int Width { get; }

    internal int Height { get; }

    /// <summary>Gives the strength at a pixel, 0 where there is no stroke, at most 1.</summary>
    internal float Strength(int x, int y) => _strength[(y * Width) + x];

    /// <summary>Gives the two directions nearest to that of the stroke and how far it lies toward the second, 0 to 1.</summary>
    internal (int Near, int Far, float Turn) Direction(int x, int y)
    {
        var position = _angle[(y * Width) + x] * _directions;
        var near = (int)position % _directions;
        return (near, (near + 1) % _directions, position - (int)position);
    }

    private void Fill(float[] pixels, int x, int y)
    {
        float At(int column, int row) => pixels[(row * Width) + column];

        // Sobel's operator.
        var across = At(x + 1, y - 1) + (2 * At(x + 1, y)) + At(x + 1, y + 1) - At(x - 1, y - 1) - (2 * At(x - 1, y)) - At(x - 1, y + 1);
        var down = At(x - 1, y + 1) + (2 * At(x, y + 1)) + At(x + 1, y + 1) - At(x - 1, y - 1) - (2 * At(x, y - 1)) - At(x + 1, y - 1);
        _strength[(y * Width) + x] = MathF.Sqrt((across * across) + (down * down));
        var angle = MathF.Atan2(down, across) / MathF.PI;
        _angle[(y * Width) + x] = angle < 0 ? angle + 1 : angle >= 1 ? 0 : angle;
    }

    private void Threshold()
    {
        var sorted = (float[])_strength.Clone();
        Array.Sort(sorted);
        var strong = sorted[(int)((sorted.Length - 1) * StrongPercentile)];
        var floor = strong * TextureShare;
        for (var index = 0; index < _strength.Length; index++)
        {
            _strength[index] = strong > 0 && _strength[index] > floor ? Math.Min(1, (float)((_strength[index] - floor) / (strong - floor))) : 0;
        }
    }
}

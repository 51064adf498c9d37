using System;
using InscriptionLab.Imaging;
using InscriptionLab.Measures;
using InscriptionLab.Vision.Native;
using OpenCvSharp;

namespace InscriptionLab.Vision.Strips;

/// <summary>Where the samples of a derived picture lie in the photo.</summary>
/// <remarks>
/// With one sample a pixel the map is asked for each. With more it is asked for the corners of each pixel, and the samples between lie on straight lines: a map that bends within one
/// pixel of its result would have to turn by a radian in a few pixels.
/// </remarks>
/// <param name="map">Leads from the pixels of the result to the photo.</param>
/// <param name="width">Columns of the result.</param>
/// <param name="samples">Samples a pixel, along X and along Y.</param>
internal sealed class SampleGrid(IPixelMap map, int width, (int X, int Y) samples)
{
    /// <summary>Gets the samples of one row of the result.</summary>
    internal int SamplesPerRow => width * samples.X * samples.Y;

    /// <summary>Gets a value indicating whether a pixel has more than one sample.</summary>
    internal bool IsDense => samples.X > 1 || samples.Y > 1;

    /// <summary>Gets a value indicating whether a pixel has more than one sample along X and along Y.</summary>
    internal bool IsDenseBothWays => samples.X > 1 && samples.Y > 1;

    /// <summary>Gives the photo points of the samples of some rows of the result.</summary>
    /// <returns>32-bit X and Y; columns times the samples along X, rows times those along Y.</returns>
    internal NativeImage Positions(int from, int to)
    {
        var positions = NativeImage.Empty((to - from) * samples.Y, width * samples.X, MatType.CV_32FC2);
        try
        {
            Fill(positions.Mat.AsSpan<Vec2f>(), from, to);
            return positions;
        }
        catch
        {
            positions.Dispose();
            throw;
        }
    }

    private void Fill(Span<Vec2f> target, int from, int to)
    {
        if (!IsDense)
        {
            FillSingle(target, from, to);
            return;
        }

        var (above, below) = (new PixelPoint[width + 1], new PixelPoint[width + 1]);
        Corners(from, above);
        for (var row = from; row < to; row++)
        {
            Corners(row + 1, below);
            FillBetween(target.Slice((row - from) * SamplesPerRow, SamplesPerRow), above, below);
            (above, below) = (below, above);
        }
    }

    private void FillSingle(Span<Vec2f> target, int from, int to)
    {
        var run = new PixelPoint[width];
        for (var row = from; row < to; row++)
        {
            map.FillRun(new PixelPoint(0, row), 1, 0, run);
            var line = target.Slice((row - from) * width, width);
            for (var column = 0; column < width; column++)
            {
                line[column] = new Vec2f((float)run[column].X, (float)run[column].Y);
            }
        }
    }

    private void Corners(int row, PixelPoint[] corners) => map.FillRun(new PixelPoint(-0.5, row - 0.5), 1, 0, corners);

    private void FillBetween(Span<Vec2f> target, PixelPoint[] above, PixelPoint[] below)
    {
        var columns = width * samples.X;
        for (var line = 0; line < samples.Y; line++)
        {
            var down = (line + 0.5) / samples.Y;
            var row = target.Slice(line * columns, columns);
            var left = Between(above[0], below[0], down);
            for (var column = 0; column < width; column++)
            {
                var right = Between(above[column + 1], below[column + 1], down);
                var (stepX, stepY) = ((right.X - left.X) / samples.X, (right.Y - left.Y) / samples.X);
                for (var sample = 0; sample < samples.X; sample++)
                {
                    row[(column * samples.X) + sample] = new Vec2f((float)(left.X + ((sample + 0.5) * stepX)), (float)(left.Y + ((sample + 0.5) * stepY)));
                }

                left = right;
            }
        }
    }

    private static PixelPoint Between(PixelPoint one, PixelPoint other, double share) => new(one.X + ((other.X - one.X) * share), one.Y + ((other.Y - one.Y) * share));
}

using System;
using InscriptionLab.Vision.Models;
using InscriptionLab.Vision.Native;
using OpenCvSharp;

namespace InscriptionLab.Vision.Tubes;

/// <summary>The network that marks tube walls and their outlines in a small copy of the photo.</summary>
internal sealed class TubeNetwork : IDisposable
{
    /// <summary>
    /// Longer sides of the copies, around the 256 of training: from afar the network sees what is a tube and what only its mirror image of the table, from near
    /// where its outline runs. The mean of the three looks serves.
    /// </summary>
    private static readonly int[] LongerSides = [192, 256, 384];

    /// <summary>The network's sides must be whole multiples of this.</summary>
    private const int SideStep = 32;

    /// <summary>Input pixels a cell of the output.</summary>
    private const int CellSize = 2;

    /// <summary>Half the grey range: levels are fed as (level - 127.5) / 127.5.</summary>
    private const float HalfRange = 127.5f;

    private readonly OnnxNetwork _network;

    /// <summary>Name of the model's file.</summary>
    internal const string File = "tubes.onnx";

    internal TubeNetwork(ModelShelf shelf) => _network = shelf.Open(File, ("picture", [1, 3, -1, -1]), ["maps"]);

    /// <inheritdoc/>
    public void Dispose() => _network.Dispose();

    /// <summary>Looks at a photo.</summary>
    internal TubeMaps Look(SmallCopy copy)
    {
        var looks = Array.ConvertAll(LongerSides, side => Look(copy, side));
        return looks[^1].MeanWith(looks.AsSpan(..^1));
    }

    private TubeMaps Look(SmallCopy copy, int longerSide)
    {
        using var small = copy.To(longerSide, out var scale);
        var (width, height) = (small.Mat.Width, small.Mat.Height);
        var (fullWidth, fullHeight) = (RoundUp(width), RoundUp(height));
        using var padded = small.Apply((from, to) => Cv2.CopyMakeBorder(from, to, 0, fullHeight - height, 0, fullWidth - width, BorderTypes.Replicate));
        var pixels = padded.Mat.AsSpan<Vec3b>();
        var plane = pixels.Length;
        var numbers = new float[3 * plane];
        for (var i = 0; i < plane; i++)
        {
            numbers[i] = (pixels[i].Item0 / HalfRange) - 1;
            numbers[plane + i] = (pixels[i].Item1 / HalfRange) - 1;
            numbers[(2 * plane) + i] = (pixels[i].Item2 / HalfRange) - 1;
        }

        var output = _network.Run(numbers, [1, 3, fullHeight, fullWidth])[0];
        return new TubeMaps(output, (width + 1) / CellSize, (height + 1) / CellSize, scale / CellSize);
    }

    private static int RoundUp(int side) => (side + SideStep - 1) / SideStep * SideStep;
}

using System;
using System.Collections.Generic;
using System.Threading;
using InscriptionLab.Imaging;
using InscriptionLab.Vision.Models;
using InscriptionLab.Vision.Native;
using OpenCvSharp;

namespace InscriptionLab.Vision.Lines;

/// <summary>The network that marks lines of lettering in a strip.</summary>
internal sealed class LineDetector : IDisposable
{
    /// <summary>The detector's sides must be whole multiples of this.</summary>
    internal const int SideStep = 32;

    private readonly OnnxNetwork _network;
    private readonly int _atOnce;

    /// <summary>Loads the network.</summary>
    /// <param name="shelf">The models folder.</param>
    /// <param name="atOnce">Most parts of a strip looked at at the same time.</param>
    internal LineDetector(ModelShelf shelf, int atOnce = 1)
    {
        _network = shelf.Open("detector.onnx", ("strip", [1, 1, -1, -1]), ["maps"]);
        _atOnce = atOnce;
    }

    /// <inheritdoc/>
    public void Dispose() => _network.Dispose();

    /// <summary>Looks through a strip.</summary>
    /// <param name="strip">Grey strip.</param>
    /// <param name="scale">Input pixels a strip pixel, at most 1.</param>
    internal LineMaps Look(GrayImage strip, double scale)
    {
        using var native = NativeImage.View(strip);
        using var shrunk = Shrunk(native, scale);
        return Run(shrunk, scale, default);
    }

    /// <summary>Looks through parts of a strip.</summary>
    /// <param name="strip">Grey strip.</param>
    /// <param name="scale">Input pixels a strip pixel, at most 1.</param>
    /// <param name="parts">Parts, in input pixels of the whole strip.</param>
    /// <param name="cancel">Stops between parts.</param>
    internal LineMaps[] Look(GrayImage strip, double scale, IReadOnlyList<Rect> parts, CancellationToken cancel)
    {
        if (parts.Count == 0)
        {
            return [];
        }

        using var native = NativeImage.View(strip);
        using var shrunk = Shrunk(native, scale);
        var whole = new Rect(0, 0, shrunk.Mat.Width, shrunk.Mat.Height);
        return SideBySide.Map(parts, _atOnce, part => Run(shrunk, part & whole, scale), cancel);
    }

    private static NativeImage Shrunk(NativeImage strip, double scale)
    {
        var size = new Size(Math.Max(1, (int)Math.Round(strip.Mat.Width * scale)), Math.Max(1, (int)Math.Round(strip.Mat.Height * scale)));
        return strip.Apply((from, to) => Cv2.Resize(from, to, size, 0, 0, InterpolationFlags.Area));
    }

    private LineMaps Run(NativeImage whole, Rect part, double scale)
    {
        using var cut = NativeImage.Own(new Mat(whole.Mat, part));
        return Run(cut, scale, (part.Left, part.Top));
    }

    private LineMaps Run(NativeImage input, double scale, (int Left, int Top) origin)
    {
        var (width, height) = (input.Mat.Width, input.Mat.Height);
        var (fullWidth, fullHeight) = (RoundUp(width), RoundUp(height));

        // The mean grey, as in training: repeated edge pixels would look like engraved rules.
        using var padded = input.Apply((from, to) => Cv2.CopyMakeBorder(from, to, 0, fullHeight - height, 0, fullWidth - width, BorderTypes.Constant | BorderTypes.Isolated, Cv2.Mean(from)));
        var output = _network.Run(NetworkInput.Of(padded.ToGray().Pixels), [1, 1, fullHeight, fullWidth])[0];
        return new LineMaps(output.Numbers, fullWidth / LineMaps.CellSize, fullHeight / LineMaps.CellSize, scale, origin);
    }

    /// <summary>Gives the next side that the network takes.</summary>
    internal static int RoundUp(int side) => (side + SideStep - 1) / SideStep * SideStep;
}

using System;
using InscriptionLab.Imaging;
using InscriptionLab.Vision.Models;
using InscriptionLab.Vision.Native;
using OpenCvSharp;

namespace InscriptionLab.Vision.Lines;

/// <summary>The network that marks lines of lettering in a strip.</summary>
internal sealed class LineDetector : IDisposable
{
    /// <summary>The detector's sides must be whole multiples of this.</summary>
    private const int SideStep = 32;

    private readonly OnnxNetwork _network;

    internal LineDetector(ModelShelf shelf) => _network = shelf.Open("detector.onnx", ("strip", [1, 1, -1, -1]), ["maps"]);

    /// <inheritdoc/>
    public void Dispose() => _network.Dispose();

    /// <summary>Looks through a strip.</summary>
    /// <param name="strip">Grey strip.</param>
    /// <param name="scale">Input pixels a strip pixel, at most 1.</param>
    internal LineMaps Look(GrayImage strip, double scale)
    {
        var width = Math.Max(1, (int)Math.Round(strip.Width * scale));
        var height = Math.Max(1, (int)Math.Round(strip.Height * scale));
        var (fullWidth, fullHeight) = (RoundUp(width), RoundUp(height));
        using var native = NativeImage.View(strip);
        using var shrunk = native.Apply((from, to) => Cv2.Resize(from, to, new Size(width, height), 0, 0, InterpolationFlags.Area));

        // The mean grey, as in training: repeated edge pixels would look like engraved rules.
        using var padded = shrunk.Apply((from, to) => Cv2.CopyMakeBorder(from, to, 0, fullHeight - height, 0, fullWidth - width, BorderTypes.Constant, Cv2.Mean(from)));
        var output = _network.Run(NetworkInput.Of(padded.ToGray().Pixels), [1, 1, fullHeight, fullWidth])[0];
        return new LineMaps(output.Numbers, fullWidth / LineMaps.CellSize, fullHeight / LineMaps.CellSize, scale);
    }

    private static int RoundUp(int side) => (side + SideStep - 1) / SideStep * SideStep;
}

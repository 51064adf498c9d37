using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using System.Threading;
using InscriptionLab.Imaging;
using InscriptionLab.Readings;
using InscriptionLab.Vision.Models;
using InscriptionLab.Vision.Native;

namespace InscriptionLab.Vision.Reading;

/// <summary>The network that reads engraved lettering.</summary>
internal sealed class EngravedNetwork : IDisposable
{
    /// <summary>File name in the models folder.</summary>
    internal const string File = "reader.onnx";

    /// <summary>Rows of a line crop.</summary>
    internal const int Height = 64;

    /// <summary>Columns of a line crop that one frame covers.</summary>
    internal const int FrameWidth = 4;

    private readonly OnnxNetwork _network;
    private readonly ModelCard _card;
    private readonly int _atOnce;

    /// <summary>Loads the network.</summary>
    /// <param name="shelf">The models folder.</param>
    /// <param name="atOnce">Most lines looked at at the same time.</param>
    internal EngravedNetwork(ModelShelf shelf, int atOnce = 1)
    {
        _atOnce = atOnce;
        _card = shelf.Card(File);
        _network = shelf.Open(File, ("line", [-1, 1, Height, -1]), ["log_probs", "orientation", "style", "lettering", "edges"]);
    }

    /// <summary>Gets the styles in the order of the network's output.</summary>
    internal ImmutableArray<string> Styles => _card.Styles;

    /// <summary>Gets the first digits of the model's hash: which training it is.</summary>
    internal string Version => _card.Sha256[..8];

    /// <inheritdoc/>
    public void Dispose() => _network.Dispose();

    /// <summary>Looks at line crops. Each goes through the network alone: its recurrent layers scale their input by the largest number in a run, so that a line would change what is seen of another.</summary>
    /// <param name="crops">Crops of the network's height, each width a multiple of a frame.</param>
    /// <param name="cancel">Stops between runs.</param>
    /// <returns>One sight a crop, in order.</returns>
    internal LineSight[] Look(IReadOnlyList<GrayImage> crops, CancellationToken cancel) => SideBySide.Map(crops, _atOnce, Look, cancel);

    private LineSight Look(GrayImage crop)
    {
        var outputs = _network.Run(NetworkInput.Of(crop.Pixels), [1, 1, Height, crop.Width]);
        var edges = outputs[4].Numbers;
        return new LineSight(
            new LinePosteriors(_card.Classes, _card.Blank, outputs[0].Numbers).AtTemperature(_card.Temperature),
            SoftMax(outputs[1].Numbers),
            SoftMax(outputs[2].Numbers),
            1 / (1 + Math.Exp(-outputs[3].Numbers[0])),
            [.. Enumerable.Range(0, edges.Length / 2).Select(frame => (edges[2 * frame], edges[(2 * frame) + 1]))]);
    }

    private static ImmutableArray<double> SoftMax(float[] logits)
    {
        var largest = logits.Max();
        var weights = logits.Select(logit => Math.Exp(logit - largest)).ToArray();
        var sum = weights.Sum();
        return [.. weights.Select(weight => weight / sum)];
    }
}

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

    /// <summary>Most lines in one run: more bring no speed on a few cores and only take memory.</summary>
    private const int LargestBatch = 8;

    private readonly OnnxNetwork _network;
    private readonly ModelCard _card;

    internal EngravedNetwork(ModelShelf shelf)
    {
        _card = shelf.Card(File);
        _network = shelf.Open(File, ("line", [-1, 1, Height, -1]), ["log_probs", "orientation", "style", "lettering", "edges"]);
    }

    /// <summary>Gets the styles in the order of the network's output.</summary>
    internal ImmutableArray<string> Styles => _card.Styles;

    /// <summary>Gets the first digits of the model's hash: which training it is.</summary>
    internal string Version => _card.Sha256[..8];

    /// <inheritdoc/>
    public void Dispose() => _network.Dispose();

    /// <summary>Looks at line crops; crops of one width go through the network together.</summary>
    /// <param name="crops">Crops of the network's height, each width a multiple of a frame.</param>
    /// <param name="cancel">Stops between runs.</param>
    /// <returns>One sight a crop, in order.</returns>
    internal LineSight[] Look(IReadOnlyList<GrayImage> crops, CancellationToken cancel)
    {
        var sights = new LineSight[crops.Count];
        foreach (var group in Enumerable.Range(0, crops.Count).GroupBy(index => crops[index].Width))
        {
            foreach (var batch in group.Chunk(LargestBatch))
            {
                cancel.ThrowIfCancellationRequested();
                Look(crops, batch, group.Key, sights);
            }
        }

        return sights;
    }

    private void Look(IReadOnlyList<GrayImage> crops, int[] batch, int width, LineSight[] sights)
    {
        var size = width * Height;
        var numbers = new float[batch.Length * size];
        for (var place = 0; place < batch.Length; place++)
        {
            NetworkInput.Fill(crops[batch[place]].Pixels, numbers.AsSpan(place * size, size));
        }

        var outputs = _network.Run(numbers, [batch.Length, 1, Height, width]);
        for (var place = 0; place < batch.Length; place++)
        {
            float[] Part(int output)
            {
                var length = outputs[output].Numbers.Length / batch.Length;
                return outputs[output].Numbers.AsSpan(place * length, length).ToArray();
            }

            var edges = Part(4);
            sights[batch[place]] = new LineSight(
                new LinePosteriors(_card.Classes, _card.Blank, Part(0)).AtTemperature(_card.Temperature),
                SoftMax(Part(1)),
                SoftMax(Part(2)),
                1 / (1 + Math.Exp(-Part(3)[0])),
                [.. Enumerable.Range(0, edges.Length / 2).Select(frame => (edges[2 * frame], edges[(2 * frame) + 1]))]);
        }
    }

    private static ImmutableArray<double> SoftMax(float[] logits)
    {
        var largest = logits.Max();
        var weights = logits.Select(logit => Math.Exp(logit - largest)).ToArray();
        var sum = weights.Sum();
        return [.. weights.Select(weight => weight / sum)];
    }
}

using System;
using System.Linq;
using System.Threading;
using InscriptionLab.Imaging;
using InscriptionLab.Vision.Reading;
using InscriptionLab.Vision.Tests.Tubes;
using Xunit;

namespace InscriptionLab.Vision.Tests.Reading;

public sealed class SteadySightTests
{
    private const int Width = 160;

    [Fact]
    public void What_is_seen_is_the_mean_of_three_looks_two_rows_apart()
    {
        var crop = Bars(0);
        using var network = new EngravedNetwork(ModelsOfProject.Shelf());

        var steady = SteadySight.Look(network, [crop], CancellationToken.None).Single().Posteriors;
        var single = network.Look([crop, Bars(2), Bars(-2)], CancellationToken.None).Select(sight => sight.Posteriors).ToArray();

        for (var frame = 0; frame < steady.Frames; frame++)
        {
            Assert.Equal(1, steady.Frame(frame).ToArray().Sum(value => Math.Exp(value)), 1e-3);
            for (var index = 0; index < steady.Classes.Length; index++)
            {
                Assert.Equal(single.Average(look => Math.Exp(look.Frame(frame)[index])), Math.Exp(steady.Frame(frame)[index]), 1e-5);
            }
        }
    }

    /// <summary>Upright bars that reach neither the first nor the last rows, so that moving them leaves nothing out.</summary>
    private static GrayImage Bars(int down)
    {
        var pixels = Enumerable.Repeat((byte)200, Width * EngravedNetwork.Height).ToArray();
        for (var row = 12 + down; row < 52 + down; row++)
        {
            for (var bar = 30; bar < 130; bar += 25)
            {
                pixels.AsSpan((row * Width) + bar, 6).Fill(60);
            }
        }

        return new GrayImage(Width, EngravedNetwork.Height, pixels);
    }
}

using System;
using System.Linq;
using CsCheck;
using InscriptionLab.Readings;
using Xunit;

namespace InscriptionLab.Core.Tests.Readings;

public sealed class LinePosteriorsTests
{
    [Fact]
    public void A_temperature_of_one_changes_nothing() => EveryPath.Matrices.Sample(posteriors =>
        Numbers(posteriors).Zip(Numbers(posteriors.AtTemperature(1))).All(pair => Math.Abs(pair.First - pair.Second) < 1e-5));

    [Fact]
    public void Frames_sum_to_one_at_any_temperature() => Gen.Select(EveryPath.Matrices, Gen.Double[0.2, 5]).Sample((posteriors, temperature) =>
    {
        var tempered = posteriors.AtTemperature(temperature);
        return Enumerable.Range(0, tempered.Frames).All(frame => Math.Abs(tempered.Frame(frame).ToArray().Sum(logarithm => Math.Exp(logarithm)) - 1) < 1e-5);
    });

    /// <summary>Numbers are kept in single precision, so classes that were equal to its last digits may change places; no others may.</summary>
    [Fact]
    public void The_likeliest_class_of_a_frame_is_the_same_at_any_temperature() => Gen.Select(EveryPath.Matrices, Gen.Double[0.2, 5]).Sample((posteriors, temperature) =>
    {
        const float SinglePrecision = 1e-4f;
        var tempered = posteriors.AtTemperature(temperature);
        for (var frame = 0; frame < posteriors.Frames; frame++)
        {
            var likeliest = IndexOfLargest(tempered.Frame(frame));
            var best = posteriors.Frame(frame)[IndexOfLargest(posteriors.Frame(frame))];
            Assert.True(posteriors.Frame(frame)[likeliest] >= best - SinglePrecision);
        }
    });

    /// <summary>By hand: odds of 9 to 1 become 3 to 1 at temperature 2, the square root.</summary>
    [Fact]
    public void A_temperature_of_two_takes_the_square_root_of_the_odds()
    {
        var posteriors = new LinePosteriors(["", "a"], 0, [(float)Math.Log(0.1), (float)Math.Log(0.9)]);

        Assert.Equal(0.75, Math.Exp(posteriors.AtTemperature(2).Frame(0)[1]), 6);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void A_temperature_that_is_none_is_refused(double temperature) =>
        Assert.ThrowsAny<ArgumentOutOfRangeException>(() => EveryPath.Of([1, 1, 1]).AtTemperature(temperature));

    private static float[] Numbers(LinePosteriors posteriors) =>
        [.. Enumerable.Range(0, posteriors.Frames).SelectMany(frame => posteriors.Frame(frame).ToArray())];

    private static int IndexOfLargest(ReadOnlySpan<float> values)
    {
        var largest = 0;
        for (var i = 1; i < values.Length; i++)
        {
            largest = values[i] > values[largest] ? i : largest;
        }

        return largest;
    }
}

using System;
using System.Linq;
using InscriptionLab.Threads;
using Xunit;

namespace InscriptionLab.Core.Tests.Threads;

public sealed class ThreadTests
{
    private const double Pitch = 0.7;

    /// <summary>BS 84 rows, which round the depth to a ten-thousandth first: 1/4 in, 20 turns: effective 0.2180, core 0.1860; 1/2 in, 12 turns: 0.4467, 0.3933; 1 in, 8 turns: 0.9200, 0.8400.</summary>
    [Theory]
    [InlineData(0.25, 20, 0.2180, 0.1860)]
    [InlineData(0.5, 12, 0.4467, 0.3933)]
    [InlineData(1, 8, 0.9200, 0.8400)]
    public void Whitworth_diameters_are_those_of_the_standard(double major, double turns, double effective, double core)
    {
        var (middle, root) = ThreadSeries.Whitworth(major, 1 / turns);
        Assert.Equal(effective, middle, 0.0001);
        Assert.Equal(core, root, 0.0001);
        Assert.Contains(turns, ThreadSeries.WhitworthTurns);
    }

    /// <summary>ISO 8038 (microscope objectives): 36 turns to the inch, 0.705556 mm, 0.451786 mm deep.</summary>
    [Fact]
    public void The_microscope_thread_has_its_published_pitch_and_depth()
    {
        var pitch = ThreadSeries.PitchOfTurns(ThreadSeries.MicroscopeTurns);
        Assert.Equal(0.705556, pitch, 6);
        Assert.Equal(0.451786, ThreadSeries.WhitworthDepth * pitch, 6);
    }

    [Theory]
    [InlineData(30)]
    [InlineData(36)]
    [InlineData(24)]
    public void Whole_turns_to_the_inch_are_told_from_metric_pitches(int turns) =>
        Assert.Equal(ThreadFamily.Inch, ThreadComparison.Of(ThreadSeries.PitchOfTurns(turns), 0.002).Family);

    [Theory]
    [InlineData(0.5)]
    [InlineData(0.6)]
    [InlineData(0.8)]
    public void Metric_pitches_are_told_from_whole_turns(double pitch) =>
        Assert.Equal(ThreadFamily.Metric, ThreadComparison.Of(pitch, 0.001).Family);

    /// <summary>0.75 mm is 33.87 turns to the inch: 0.4 per cent from 34.</summary>
    [Fact]
    public void Families_that_lie_too_close_are_not_told_apart() =>
        Assert.Equal(ThreadFamily.CannotTell, ThreadComparison.Of(0.749, 0.004).Family);

    [Fact]
    public void A_private_thread_is_moved_to_no_standard() =>
        Assert.Equal(ThreadFamily.Neither, ThreadComparison.Of(25.4 / 28.5, 0.002).Family);

    /// <summary>Profiles with noise, shading and a truth known exactly: within half a per cent, in 200 of 200.</summary>
    [Fact]
    public void Pitches_of_drawn_profiles_come_out_within_half_a_per_cent()
    {
        var random = new Random(5);
        for (var trial = 0; trial < 200; trial++)
        {
            var pitch = 0.35 + (1.3 * random.NextDouble());
            var phase = random.NextDouble();
            var light = Enumerable.Range(0, 700).Select(i => Profile((i * 0.025 / pitch) + phase) + (0.15 * (random.NextDouble() - 0.5)) + (0.0006 * i)).ToArray();
            var fit = ThreadPitchFit.Of(light, 0.025)!;
            Assert.Equal(pitch, fit.PitchMillimetres, 0.005 * pitch);
        }
    }

    /// <summary>Crests are as scattered in a short piece of a thread as in a long one under the same noise: a line through six of them takes two degrees of freedom, which the scatter must make good.</summary>
    [Fact]
    public void A_short_thread_is_not_taken_to_be_better_than_a_long_one()
    {
        double Square(int samples, int trials) => Waves(samples, trials).Average(fit => Math.Pow(Scatter(fit), 2));

        Assert.InRange(Square(210, 400) / Square(1400, 30), 0.8, 1.2);
    }

    /// <summary>A tenth of the distance of samples is the least scatter believed; places rounded to samples would scatter by 0.29 of it (1 over the root of 12).</summary>
    [Fact]
    public void Crests_of_a_clean_wave_are_placed_between_the_samples()
    {
        var fit = ThreadPitchFit.Of([.. Enumerable.Range(0, 700).Select(i => Math.Cos(Math.Tau * ((i * 0.025 / 0.713) + 0.37)))], 0.025)!;

        Assert.Equal(0.1 * 0.025, Scatter(fit), 1e-4);
        Assert.Equal(0.713, fit.PitchMillimetres, 1e-4);
    }

    /// <summary>Errors of 300 pitches are as large as their uncertainties say.</summary>
    [Fact]
    public void The_uncertainty_of_a_pitch_is_the_size_of_its_errors()
    {
        var fits = Waves(700, 300);

        Assert.InRange(Math.Sqrt(fits.Average(fit => Math.Pow((fit.PitchMillimetres - Pitch) / fit.StandardUncertainty, 2))), 0.7, 1.4);
    }

    [Fact]
    public void Plain_noise_has_no_pitch()
    {
        var random = new Random(6);
        Assert.Null(ThreadPitchFit.Of([.. Enumerable.Range(0, 700).Select(_ => random.NextDouble())], 0.025));
    }

    /// <summary>How far crests lie off the line, in millimetres: the slope of a line through n crests one apart, each scattered by s, is uncertain by s over the root of n (n² - 1) / 12.</summary>
    private static double Scatter(ThreadPitchFit fit) => fit.StandardUncertainty * Math.Sqrt(fit.Crests * ((fit.Crests * fit.Crests) - 1) / 12.0);

    /// <summary>Fits waves of light with noise.</summary>
    private static ThreadPitchFit[] Waves(int samples, int trials)
    {
        var random = new Random(7);
        return [.. Enumerable.Range(0, trials)
            .Select(_ => random.NextDouble())
            .Select(phase => ThreadPitchFit.Of([.. Enumerable.Range(0, samples).Select(i => Math.Cos(Math.Tau * ((i * 0.025 / Pitch) + phase)) + (0.6 * (random.NextDouble() - 0.5)))], 0.025)!)];
    }

    /// <summary>Light on a V-shaped groove: one flank lit, the other in shade, crests rounded.</summary>
    private static double Profile(double turns)
    {
        var x = turns - Math.Floor(turns);
        return 0.4 + (x < 0.5 ? 0.25 : 0.05) + (0.1 * Math.Abs(x - 0.5));
    }
}

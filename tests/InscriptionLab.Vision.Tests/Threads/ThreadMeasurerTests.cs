using System;
using System.Threading;
using InscriptionLab.Cells;
using InscriptionLab.Measures;
using InscriptionLab.Outcomes;
using InscriptionLab.Threads;
using InscriptionLab.Vision.Tests.Cells;
using InscriptionLab.Vision.Threads;
using Xunit;

namespace InscriptionLab.Vision.Tests.Threads;

public sealed class ThreadMeasurerTests
{
    [Theory]
    [InlineData(25.4 / 24, 3, ThreadFamily.Inch)]
    [InlineData(25.4 / 30, 10, ThreadFamily.Inch)]
    [InlineData(0.8, 7, ThreadFamily.Metric)]
    public void The_pitch_of_a_drawn_thread_is_measured_within_half_a_per_cent_and_its_family_never_mistaken(double pitch, double tilt, ThreadFamily family)
    {
        var drawn = new RenderedCell { ThreadPitch = pitch, TiltDegrees = tilt };
        var found = Assert.IsType<Outcome<ThreadMeasurement>.Found>(Run(drawn)).Value;
        Assert.Equal(pitch, found.Pitch.Value.Millimetres, 0.005 * pitch);
        Assert.Equal(pitch, found.Pitch.Value.Millimetres, found.Pitch.ExpandedUncertainty.Millimetres);
        Assert.True(found.Comparison.Family == family || found.Comparison.Family == ThreadFamily.CannotTell, found.Comparison.Sentence);
    }

    [Fact]
    public void A_plain_tube_has_no_pitch() =>
        Assert.IsType<Outcome<ThreadMeasurement>.Declined>(Run(new RenderedCell { ThreadPitch = 1000 }));

    /// <summary>Pitches of both families and private ones at random, tilted, blurred and noisy. It takes minutes and is run by hand.</summary>
    [Fact(Explicit = true)]
    public void Families_of_drawn_threads_are_right_or_not_told()
    {
        var random = new Random(9);
        var (mistaken, within, told) = (0, 0, 0);
        const int Trials = 100;
        for (var i = 0; i < Trials; i++)
        {
            var family = (ThreadFamily)(i % 2);
            double[] metric = [0.5, 0.6, 0.7, 0.75, 0.8, 1, 1.25];
            var pitch = family == ThreadFamily.Inch ? 25.4 / random.Next(18, 50) : metric[random.Next(metric.Length)];
            var drawn = new RenderedCell { ThreadPitch = pitch, TiltDegrees = 15 * random.NextDouble(), TiltDirectionDegrees = 360 * random.NextDouble(), BlurPixels = 0.4 + (0.5 * random.NextDouble()), Noise = 0.02 * random.NextDouble(), Seed = i };
            if (Run(drawn) is not Outcome<ThreadMeasurement>.Found found)
            {
                continue;
            }

            told += found.Value.Comparison.Family == ThreadFamily.CannotTell ? 0 : 1;
            mistaken += found.Value.Comparison.Family == family || found.Value.Comparison.Family == ThreadFamily.CannotTell ? 0 : 1;
            within += Math.Abs(found.Value.Pitch.Value.Millimetres - pitch) <= 0.005 * pitch ? 1 : 0;
        }

        TestContext.Current.TestOutputHelper?.WriteLine($"{within} of {Trials} within half a per cent, {told} told, {mistaken} mistaken");
        Assert.True(mistaken <= 0.02 * Trials, $"{mistaken} of {Trials} families mistaken, {told} told");
        Assert.True(within >= 0.95 * Trials, $"{within} of {Trials} within half a per cent");
    }

    private static Outcome<ThreadMeasurement> Run(RenderedCell drawn)
    {
        var from = drawn.Camera.Project(new Vector3D(-19, -20, 0));
        var to = drawn.Camera.Project(new Vector3D(19, -20, 0));
        Assert.True(ScaleRequest.TryParse("checkerboard:5mm", out var scale, out _));
        return new ThreadMeasurer().Run(drawn.Draw(), new PixelSegment(from, to), new MeasureRequest(scale, Length.FromMillimetres(0)), CancellationToken.None);
    }
}

using System;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Readings;
using InscriptionLab.Vision.Reading;
using Xunit;

namespace InscriptionLab.Vision.Tests.Reading;

public sealed class LetterPeaksTests
{
    private static readonly ImmutableArray<string> Classes = ["", "E", "e", "ß", "5"];

    [Fact]
    public void Each_letter_of_the_best_path_gives_its_highest_frame()
    {
        var peaks = Peaks([0.9, 0.1, 0, 0, 0], [0.3, 0.6, 0.1, 0, 0], [0.1, 0.8, 0.1, 0, 0], [0.9, 0, 0, 0, 0.1], [0.2, 0, 0, 0, 0.8]);

        Assert.Equal([0.9, 0.8], peaks.Select(Rounded));
    }

    [Fact]
    public void A_letter_whose_case_is_open_stands_as_clearly_as_any() => Assert.Equal([0.98], Peaks([0.02, 0.5, 0.48, 0, 0]).Select(Rounded));

    [Fact]
    public void A_case_that_changes_from_frame_to_frame_is_one_letter() => Assert.Equal([0.95], Peaks([0.1, 0.5, 0.4, 0, 0], [0.05, 0.4, 0.55, 0, 0]).Select(Rounded));

    [Fact]
    public void Letters_parted_by_blank_are_two() => Assert.Equal(2, Peaks([0.1, 0.9, 0, 0, 0], [0.9, 0.1, 0, 0, 0], [0.1, 0.9, 0, 0, 0]).Length);

    [Fact]
    public void Only_letters_with_both_cases_among_the_classes_have_another() => Assert.Equal([-1, 2, 1, -1, -1], LetterPeaks.OtherCase(Classes));

    private static double Rounded(double value) => Math.Round(value, 6);

    private static ImmutableArray<double> Peaks(params double[][] frames) =>
        LetterPeaks.Of(new LinePosteriors(Classes, 0, [.. frames.SelectMany(frame => frame.Select(probability => (float)Math.Log(probability)))]));
}

using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Advice;
using InscriptionLab.App.Examining;
using Xunit;

namespace InscriptionLab.App.Tests.Advising;

/// <summary>Grooves bright in one line and dark in another are told only where photos under different lamps agree.</summary>
public sealed class ToneWordsTests
{
    private static readonly ImmutableArray<LineTone> Unlike = [new(0, -0.4, 0.05), new(1, 0.3, 0.05)];

    private static readonly ImmutableArray<LineTone> Turned = [new(0, 0.4, 0.05), new(1, -0.3, 0.05)];

    private static readonly ImmutableArray<LineTone> Alike = [new(0, -0.4, 0.05), new(1, -0.3, 0.05)];

    [Fact]
    public void Most_photos_of_a_view_must_show_it()
    {
        Assert.Contains("3 of 4 photos", ToneWords.Of(View(Unlike, Unlike, Alike, Unlike)), System.StringComparison.Ordinal);
        Assert.Contains("no proof", ToneWords.Of(View(Unlike, Unlike)), System.StringComparison.Ordinal);
        Assert.Null(ToneWords.Of(View(Unlike, Alike, Alike, Unlike)));
        Assert.Null(ToneWords.Of(View(Unlike)));
    }

    [Fact]
    public void Photos_that_contradict_one_another_tell_nothing() => Assert.Null(ToneWords.Of(View(Unlike, Unlike, Turned, Unlike)));

    private static ImmutableArray<Examination> View(params ImmutableArray<LineTone>[] tones)
    {
        var one = TruthExaminations.Of("raking-1.jpg");
        return [.. tones.Select(tone => one with { Advice = one.Advice with { Measures = one.Advice.Measures with { Tones = tone } } })];
    }
}

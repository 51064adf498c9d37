using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using InscriptionLab.Vision.Tests.Rendering;
using Xunit;

namespace InscriptionLab.App.Tests.Rings;

/// <summary>The figures of lettering round rings, by hand: <c>-explicit only</c>. Rendered rings with invented names, never real brass.</summary>
public sealed class RingFigures(ITestOutputHelper output)
{
    private const int Count = 32;

    [Fact(Explicit = true)]
    public void Rings_looked_at_while_the_program_was_made() => Print(7);

    [Fact(Explicit = true)]
    public void Rings_not_looked_at() => Print(2026);

    private void Print(int seed)
    {
        using var composition = new Composition();
        var scores = new List<(EngravedRing Ring, RingScore Score)>();
        foreach (var ring in RingCases.Take(Count, seed))
        {
            var score = RingScore.Of(composition, ring);
            scores.Add((ring, score));
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{scores.Count - 1,3}  tilt {ring.Scene.Tilt * 180 / Math.PI,4:0.0}  x {XHeight(ring),4:0.0} px  rim {score.RimError?.ToString("0.0", CultureInfo.InvariantCulture) ?? "none",5}  edits {score.Edits,2} of {score.Length,2}  boxes {score.Overlaps.Average():0.00}  ring {Milliseconds(score, "ring"),5:0} ms  all {score.Examination.Times.Sum(time => time.Elapsed.TotalMilliseconds),5:0} ms  {string.Join(" | ", ring.Texts.Select(text => text.Text + (text.TopsOutward ? " out" : " in")))} -> {string.Join(" | ", score.Examination.Reading.Lines.Select(line => line.Text))}"));
        }

        void Row(string name, Func<EngravedRing, bool> of)
        {
            var group = scores.Where(score => of(score.Ring)).Select(score => score.Score).ToList();
            var overlaps = group.SelectMany(score => score.Overlaps).ToList();
            output.WriteLine(group.Count == 0 ? $"{name}: none" : string.Create(CultureInfo.InvariantCulture, $"{name}: rings read {group.Count(score => score.RimError is not null)} of {group.Count}; character error {100.0 * group.Sum(score => score.Edits) / group.Sum(score => score.Length):0.0} % ({group.Sum(score => score.Edits)} of {group.Sum(score => score.Length)}); boxes mean {overlaps.Average():0.00}, at least 0.5 for {overlaps.Count(overlap => overlap >= 0.5)} of {overlaps.Count}"));
        }

        Row("all", _ => true);
        Row("tops outward", ring => ring.Texts.All(text => text.TopsOutward));
        Row("tops inward", ring => ring.Texts.All(text => !text.TopsOutward));
        Row("two texts", ring => ring.Texts.Length == 2);
        Row("closed face", ring => ring.Closed);
        Row("bare grooves", ring => ring.Fill is null);
        Row("x below 20 px", ring => XHeight(ring) < 20);
        Row("x from 20 px", ring => XHeight(ring) >= 20);
        Row("tilt from 15 degrees", ring => ring.Scene.Tilt >= 15 * Math.PI / 180);
        Assert.NotEmpty(scores);
    }

    private static double XHeight(EngravedRing ring) => ring.Texts[0].XHeight * ring.Scene.EllipseOf(1).SemiMajor.Pixels;

    private static double Milliseconds(RingScore score, string stage) => score.Examination.Times.Where(time => time.Stage == stage).Sum(time => time.Elapsed.TotalMilliseconds);
}

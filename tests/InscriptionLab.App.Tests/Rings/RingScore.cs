using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using System.Threading;
using InscriptionLab.App.Demo;
using InscriptionLab.App.Examining;
using InscriptionLab.Assess.Scores;
using InscriptionLab.Measures;
using InscriptionLab.Vision.Tests.Rendering;

namespace InscriptionLab.App.Tests.Rings;

/// <summary>What the whole program made of one drawn ring, against its exact truth.</summary>
/// <param name="Examination">What the program gave.</param>
/// <param name="RimError">How far the found rim lies off the true one at most, in pixels; null where no ring was read.</param>
/// <param name="Edits">Letters and spaces to change.</param>
/// <param name="Length">Letters and spaces cut.</param>
/// <param name="Overlaps">For each letter cut, its largest overlap with a letter read.</param>
internal sealed record RingScore(Examination Examination, double? RimError, int Edits, int Length, ImmutableArray<double> Overlaps)
{
    internal static RingScore Of(Composition composition, EngravedRing ring, Func<ExaminingStages, ExaminingStages>? change = null)
    {
        var photo = ring.Draw();
        var stages = composition.Stages(DemoReferences.Load()) with { Open = _ => photo };
        var examination = new Examiner(change is null ? stages : change(stages), TimeProvider.System).Examine("drawn.jpg", CancellationToken.None);
        var read = string.Join(' ', examination.Reading.Lines.Select(line => line.Text));
        var orders = ring.Texts.Length < 2 ? [ring.Texts] : new[] { ring.Texts, [.. ring.Texts.Reverse()] };
        var cut = orders.Select(texts => string.Join(' ', texts.Select(text => text.Text))).MinBy(text => EditDistance.Between(text, read))!;
        var boxes = examination.Reading.Lines.SelectMany(line => line.Letters).Where(letter => !letter.IsSpace).Select(letter => Corners(letter.InPhoto)).ToList();
        return new RingScore(
            examination,
            examination.Ring is { } found ? Enumerable.Range(0, 36).Max(i => Off(found.Plane.ToPlane(ring.Scene.Project(1, i * Math.Tau / 36))?.Radius, found.Outer)) : null,
            EditDistance.Between(cut, read),
            cut.Length,
            [.. ring.Truth().Select(letter => boxes.Select(box => ConvexPatch.Overlap(Corners(letter.Box), box)).DefaultIfEmpty(0).Max())]);
    }

    private static double Off(double? radius, PixelEllipse outer) => Math.Abs((radius ?? 0) - 1) * outer.SemiMajor.Pixels;

    private static List<(double X, double Y)> Corners(Quad quad) =>
        [(quad.TopLeft.X, quad.TopLeft.Y), (quad.TopRight.X, quad.TopRight.Y), (quad.BottomRight.X, quad.BottomRight.Y), (quad.BottomLeft.X, quad.BottomLeft.Y)];
}

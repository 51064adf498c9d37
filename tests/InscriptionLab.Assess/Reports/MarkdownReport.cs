using System;
using System.Globalization;
using System.Linq;
using System.Text;
using InscriptionLab.Assess.Scores;

namespace InscriptionLab.Assess.Reports;

/// <summary>An assessment as Markdown: every rate with the counts behind it.</summary>
internal static class MarkdownReport
{
    private const double GoodOverlap = 0.5;

    internal static string Of(Assessment assessment)
    {
        var text = new StringBuilder();
        Reading(text, assessment);
        Other(text, assessment);
        Kept(text, assessment);
        Cells(text, assessment);
        foreach (var failure in assessment.Failures)
        {
            Line(text, $"Not used: {failure}");
        }

        return text.ToString();
    }

    private static void Reading(StringBuilder text, Assessment assessment)
    {
        Line(text, $"| photos | number | character error | error on letters that can be seen | words right | name words right | misspelt names kept / corrected / misread |");
        Line(text, $"|---|---|---|---|---|---|---|");
        foreach (var group in assessment.Reading)
        {
            Line(text, $"| {group.Group} | {group.Photos} | {Share(group.Edits, group.Letters)} | {Share(group.EditsVisible, group.LettersVisible)} | {Share(group.WordsRight, group.Words)} | {Share(group.NameWordsRight, group.NameWords)} | {Fates(group)} |");
        }

        text.Append('\n');
    }

    private static void Other(StringBuilder text, Assessment assessment)
    {
        Line(text, $"| figure | value |");
        Line(text, $"|---|---|");
        Line(text, $"| photos without lettering in which text was read | {assessment.BlanksWithText} of {assessment.Blanks} ({assessment.FalseLetters} letters or digits in all) |");
        Line(text, $"| tubes found | {assessment.TubesFound} of {assessment.TubesTrue}; imagined where there is none: {assessment.TubesImagined} |");
        Line(text, $"| tube diameter, relative error | {Percent(assessment.Diameter)} |");
        Line(text, $"| tube axis, error in degrees | {Plain(assessment.Axis, "0.00")} |");
        Line(text, $"| letter boxes, overlap with the truth | {Boxes(assessment)} |");
        Line(text, $"| letter probabilities, expected calibration error | {Calibrated(assessment.Calibration)} |");
        Line(text, $"| seconds a photo, on {Environment.ProcessorCount} processor cores | {Plain(assessment.Seconds, "0.00")} |");
        text.Append('\n');
    }

    private static void Kept(StringBuilder text, Assessment assessment)
    {
        if (assessment.Kept.Length == 0)
        {
            return;
        }

        Line(text, $"| letters that count as read | of all letters read | wrong among them |");
        Line(text, $"|---|---|---|");
        foreach (var point in assessment.Kept)
        {
            Line(text, $"| {(point.From == 0 ? "all" : Invariant($"probability {point.From:0.##} or more"))} | {Share(point.Kept, point.Letters)} | {Share(point.Wrong, point.Kept)} |");
        }

        text.Append('\n');
    }

    private static void Cells(StringBuilder text, Assessment assessment)
    {
        if (assessment.Measured + assessment.NotMeasured == 0)
        {
            return;
        }

        Line(text, $"| lens cells (kind and size of the scale given, its height to half a millimetre) | relative error of the diameters |");
        Line(text, $"|---|---|");
        foreach (var group in assessment.Cells)
        {
            Line(text, $"| {group.Group} | {Percent(group.Errors)} |");
        }

        Line(text, $"| truth within the stated expanded uncertainty | {Share(assessment.Covered, assessment.Measured)} |");
        Line(text, $"| diameters not measured | {assessment.NotMeasured} of {assessment.Measured + assessment.NotMeasured} |");
        text.Append('\n');
    }

    private static string Fates(TextFigures group) => group.Variants == 0
        ? "-"
        : Invariant($"{group.Fates(VariantFate.Kept)} / {group.Fates(VariantFate.Corrected)} / {group.Fates(VariantFate.Misread)} of {group.Variants}");

    private static string Boxes(Assessment assessment) => assessment.Boxes.Length == 0
        ? "-"
        : Invariant($"mean {assessment.Boxes.Average():0.00}; at least {GoodOverlap:0.0} for {Share(assessment.Boxes.Count(box => box >= GoodOverlap), assessment.Boxes.Length)} letters that can be seen");

    private static string Calibrated(Calibration? calibration) => calibration is null
        ? "-"
        : Invariant($"{calibration.ExpectedError:0.000} over {calibration.Letters} letters read (mean probability {calibration.MeanProbability:0.000}, right {Share(calibration.Right, calibration.Letters)})");

    private static string Share(int part, int whole) => whole == 0 ? "-" : Invariant($"{100.0 * part / whole:0.0} % ({part} of {whole})");

    private static string Percent(Spread? spread) => spread is null
        ? "-"
        : Invariant($"median {spread.Median * 100:0.00} %, 95th percentile {spread.Percentile95 * 100:0.00} %, largest {spread.Largest * 100:0.00} % ({spread.Count})");

    private static string Plain(Spread? spread, string format) => spread is null
        ? "-"
        : Invariant($"median {Number(spread.Median, format)}, 95th percentile {Number(spread.Percentile95, format)}, largest {Number(spread.Largest, format)} ({spread.Count})");

    private static string Number(double value, string format) => value.ToString(format, CultureInfo.InvariantCulture);

    private static void Line(StringBuilder text, FormattableString line) => text.Append(Invariant(line)).Append('\n');

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}

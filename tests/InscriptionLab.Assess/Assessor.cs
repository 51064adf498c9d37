using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.IO;
using System.Linq;
using InscriptionLab.App.Records;
using InscriptionLab.Assess.Scores;
using InscriptionLab.Assess.Truths;

namespace InscriptionLab.Assess;

/// <summary>Holds predictions against the truth.</summary>
internal sealed class Assessor(ImmutableArray<TruthPhoto> truths, Predictions predictions)
{
    /// <summary>Letters and digits from which on a reading of a bare tube counts as false text: a single one may be a scratch.</summary>
    private const int LettersOfFalseText = 2;

    private const string WholeGroup = "all tubes and raking photos";

    private readonly Dictionary<string, PhotoRecord> _photos = predictions.Photos.ToDictionary(record => Path.GetFileName(record.File), StringComparer.Ordinal);
    private readonly Dictionary<string, MeasureRecord> _cells = predictions.Cells.ToDictionary(record => Path.GetFileName(record.File), StringComparer.Ordinal);

    /// <summary>Gives all figures.</summary>
    internal Assessment Assess()
    {
        var blanks = truths.Where(IsBlank).Select(truth => Lines(truth).SelectMany(line => line).Count(char.IsLetterOrDigit)).ToList();
        var cells = CellErrors().ToList();
        var tubes = truths.Where(truth => truth.TubeDiameter is not null).ToList();
        var judged = truths.Where(truth => truth.Kind is "tube" or "raking").SelectMany(Judged).ToList();
        return new Assessment(
            Reading(),
            blanks.Count,
            blanks.Count(letters => letters >= LettersOfFalseText),
            blanks.Sum(),
            tubes.Count,
            tubes.Count(truth => TubeOf(truth) is not null),
            truths.Count(truth => truth.Trap == "no_tube" && TubeOf(truth) is not null),
            Spread.Of(tubes.Select(truth => TubeOf(truth) is { } tube ? Math.Abs(tube.DiameterPx - truth.TubeDiameter!.Value) / truth.TubeDiameter.Value : double.NaN).Where(double.IsFinite)),
            Spread.Of(tubes.Select(truth => TubeOf(truth) is { } tube && truth.AxisAngle is { } angle ? AxisError(tube, angle) : double.NaN).Where(double.IsFinite)),
            [.. truths.Where(truth => truth.Kind is "tube" or "raking").SelectMany(truth => _photos.TryGetValue(truth.File, out var record) ? BoxScorer.Overlaps(truth, record) : [])],
            Calibration.Of(judged),
            KeptLetters.Of(judged),
            [.. cells.SelectMany(error => error.Groups.Select(group => (group, error.Relative))).GroupBy(pair => pair.group, pair => pair.Relative).OrderBy(group => group.Key, StringComparer.Ordinal).Select(group => new CellFigures(group.Key, Spread.Of(group)!))],
            cells.Count(error => error.Covered),
            cells.Count,
            truths.Where(truth => truth.Measures is not null).Sum(truth => Roles.Count(role => truth.Measures!.Of(role) is not null)) - cells.Count,
            Spread.Of(predictions.Seconds),
            predictions.Failures);
    }

    private static readonly ImmutableArray<string> Roles = ["outer", "clear", "stop"];

    private static bool IsBlank(TruthPhoto truth) => truth.Kind == "trap" && truth.Lines.Length == 0;

    private IEnumerable<string> Lines(TruthPhoto truth) => _photos.TryGetValue(truth.File, out var record) ? record.Lines.Select(line => line.Text) : [];

    private TubeRecord? TubeOf(TruthPhoto truth) => _photos.TryGetValue(truth.File, out var record) ? record.Tube : null;

    private ImmutableArray<TextFigures> Reading()
    {
        var scored = truths
            .Where(truth => truth.Lines.Length > 0 && truth.Kind is not ("turn" or "cell"))
            .Select(truth => (Truth: truth, Score: TextScorer.Score(truth, Lines(truth))))
            .SelectMany(pair => GroupsOf(pair.Truth).Select(group => (group, pair.Score)));
        var sets = truths.Where(truth => truth.Set is not null).GroupBy(truth => truth.Set!, StringComparer.Ordinal)
            .Select(set => (Truth: set.First(), Record: predictions.Sets.FirstOrDefault(record => record.Files.Any(file => set.Any(truth => truth.File == Path.GetFileName(file))))))
            .Where(set => set.Record is not null)
            .Select(set => ($"{set.Record!.Set} sets read together", TextScorer.Score(set.Truth, set.Record.Lines.Select(line => line.Text), hideHidden: false)));
        return [.. scored.Concat(sets)
            .GroupBy(pair => pair.Item1, pair => pair.Item2)
            .OrderBy(group => group.Key == WholeGroup ? 0 : 1).ThenBy(group => group.Key, StringComparer.Ordinal)
            .Select(group => new TextFigures(group.Key, [.. group]))];
    }

    private static IEnumerable<string> GroupsOf(TruthPhoto truth)
    {
        yield return truth.Kind == "trap" ? $"trap: {truth.Trap}" : $"kind: {truth.Kind}";
        if (truth.Kind is "tube" or "raking")
        {
            yield return WholeGroup;
        }

        if (truth.Kind == "tube")
        {
            yield return $"style: {truth.Style}";
            yield return $"runs: {truth.TextDirection}";
            yield return $"x-height: {HeightOf(truth.XHeight ?? 0)}";
        }
    }

    private static string HeightOf(double pixels) => pixels switch
    {
        < 20 => "below 20 px",
        < 30 => "20 to 30 px",
        < 45 => "30 to 45 px",
        _ => "from 45 px",
    };

    /// <summary>Pairs each letter read with the letter cut that it stands for.</summary>
    private IEnumerable<(double Probability, bool Right)> Judged(TruthPhoto truth)
    {
        if (!_photos.TryGetValue(truth.File, out var record))
        {
            return [];
        }

        var cut = string.Concat(truth.Lines).Replace(" ", string.Empty, StringComparison.Ordinal);
        var letters = record.Lines.SelectMany(line => line.Letters).ToList();
        var pairs = EditDistance.Pairs(cut, string.Concat(letters.Select(letter => letter.Char)));
        var runes = cut.EnumerateRunes().Select(rune => rune.ToString()).ToList();
        return letters.Select((letter, i) => (letter.Probability, Right: pairs[i] >= 0 && runes[pairs[i]] == letter.Char, letter.Char))
            .Where(judged => judged.Char != "?")
            .Select(judged => (judged.Probability, judged.Right));
    }

    private static double AxisError(TubeRecord tube, double trueDegrees)
    {
        var (from, to) = (tube.Axis[0], tube.Axis[1]);
        var off = (((Math.Atan2(to[1] - from[1], to[0] - from[0]) * 180 / Math.PI) - trueDegrees) % 180 + 180) % 180;
        return Math.Min(off, 180 - off);
    }

    private IEnumerable<(double Relative, bool Covered, ImmutableArray<string> Groups)> CellErrors() =>
        from truth in truths
        where truth.Measures is not null && _cells.ContainsKey(truth.File)
        from circle in _cells[truth.File].Circles
        let right = truth.Measures!.Of(circle.Role)
        where right is not null
        let error = Math.Abs(circle.DiameterMm - right.Value)
        select (error / right.Value, error <= circle.ExpandedUncertaintyMm, CellGroups(truth, circle));

    private static ImmutableArray<string> CellGroups(TruthPhoto truth, CircleRecord circle) =>
    [
        "all diameters",
        $"circle: {circle.Role}",
        $"scale: {truth.Scale?.Type ?? "none"}",
        truth.Scale is { Coplanar: true } ? "scale at the height of the rim" : "scale below the rim",
    ];
}

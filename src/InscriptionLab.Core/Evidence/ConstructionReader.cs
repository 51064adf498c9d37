using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Globalization;
using System.Linq;
using InscriptionLab.Measures;
using InscriptionLab.Outcomes;
using InscriptionLab.References;

namespace InscriptionLab.Evidence;

/// <summary>Reads what a person recorded of a piece: a CSV with the columns feature and observation, one row an answer; an empty observation is an open question.</summary>
/// <param name="table">The checklist that it answers.</param>
public sealed class ConstructionReader(ConstructionTable table)
{
    /// <summary>The question where the last letter of the signature stands.</summary>
    public const string Direction = "signature_direction";

    /// <summary>The question which part is signed.</summary>
    public const string Position = "signature_position";

    private const string Feature = "feature";
    private const string Observation = "observation";
    private const string LetterHeight = "letter_height_mm";
    private const int MaximumErrors = 20;

    private static readonly FieldNames Fields = new([Feature, Observation, "choices", "question", "note"], [Feature, Observation]);

    /// <summary>Gets the answers that <see cref="Direction"/> may have.</summary>
    public static ImmutableArray<string> Directions => [.. ReferenceField.Directions.Select(direction => direction.Word)];

    /// <summary>Reads a record.</summary>
    /// <param name="file">Name of the file, for messages.</param>
    /// <param name="content">CSV, UTF-8.</param>
    /// <exception cref="InscriptionLabException">It is no record; the message names rows and columns.</exception>
    public ConstructionRecord Read(string file, ReadOnlySpan<byte> content)
    {
        var faults = new ReferenceFaults(file, "column");
        var rows = new CsvReferenceRows(faults, Fields).Cut(Utf8Text.Of(file, content));
        faults.ThrowIfAny(MaximumErrors);
        var seen = ImmutableArray.CreateBuilder<ConstructionFeature>();
        var measures = ImmutableArray.CreateBuilder<MeasuredValue>();
        var record = new ConstructionRecord(file, table, []);
        var named = new HashSet<string>(StringComparer.Ordinal);
        foreach (var row in rows)
        {
            var feature = row.Trimmed(Feature) ?? string.Empty;
            if (row.Trimmed(Observation) is not { } observation)
            {
                continue;
            }

            if (!named.Add(feature))
            {
                faults.Error(row.Place, Feature, $"'{feature}' is answered twice; keep one answer.");
            }
            else if (feature == Direction)
            {
                record = record with { Direction = One(row, faults, observation, ReferenceField.Directions) };
            }
            else if (feature == Position)
            {
                record = record with { Position = observation };
            }
            else if (feature == LetterHeight)
            {
                record = record with { LetterHeight = Number(row, faults, observation) is { } height ? Length.FromMillimetres(height) : null };
            }
            else if (MeasuredValue.Names.Contains(feature))
            {
                measures.AddRange(Number(row, faults, observation) is { } value ? [new MeasuredValue(feature, value)] : Enumerable.Empty<MeasuredValue>());
            }
            else
            {
                seen.AddRange(Answer(row, faults, feature, observation));
            }
        }

        faults.ThrowIfAny(MaximumErrors);
        return record with { Seen = seen.ToImmutable(), Measures = measures.ToImmutable() };
    }

    /// <summary>Gives an empty record of the checklist, to be filled in.</summary>
    public string Blank()
    {
        static string Row(string feature, string choices, string question) => $"{feature},,{choices},\"{question.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
        var rows = table.Rows.GroupBy(row => row.Feature).Select(rows => Row(rows.Key, string.Join(" | ", rows.Select(row => row.Observation)), rows.First().Question))
            .Append(Row(Direction, string.Join(" | ", ReferenceField.Directions.Select(direction => direction.Word)), "where the last letter of the signature stands"))
            .Append(Row(Position, "in words", "the part that is signed, as the list calls it"))
            .Append(Row(LetterHeight, "a number", "height of the tallest letter of the name, a capital where there is one, as measured"))
            .Concat(MeasuredValue.Names.Select(name => Row(name, "a number", "as measured")));
        return "feature,observation,choices,question\n" + string.Join('\n', rows) + "\n";
    }

    private IEnumerable<ConstructionFeature> Answer(ReferenceRow row, ReferenceFaults faults, string feature, string observation)
    {
        var answers = table.Rows.Where(known => known.Feature == feature).ToArray();
        if (answers.Length == 0)
        {
            faults.Error(row.Place, Feature, $"'{feature}' is not one of {string.Join(", ", table.Features.Append(Direction).Append(Position).Append(LetterHeight).Concat(MeasuredValue.Names))}.");
            return [];
        }

        if (answers.FirstOrDefault(known => known.Observation.Equals(observation, StringComparison.OrdinalIgnoreCase)) is { } answer)
        {
            return [answer];
        }

        faults.Error(row.Place, Observation, $"'{observation}' is not one of {string.Join(", ", answers.Select(known => known.Observation))}.");
        return [];
    }

    private static T? One<T>(ReferenceRow row, ReferenceFaults faults, string observation, ImmutableArray<(string Word, T Value)> words)
        where T : struct
    {
        foreach (var (word, value) in words)
        {
            if (word.Equals(observation, StringComparison.OrdinalIgnoreCase))
            {
                return value;
            }
        }

        faults.Error(row.Place, Observation, $"'{observation}' is not one of {string.Join(", ", words.Select(known => known.Word))}.");
        return null;
    }

    private static double? Number(ReferenceRow row, ReferenceFaults faults, string observation)
    {
        if (double.TryParse(observation, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value) && value > 0)
        {
            return value;
        }

        faults.Error(row.Place, Observation, $"'{observation}' is not a number above zero, such as 38.2 (with a point).");
        return null;
    }
}

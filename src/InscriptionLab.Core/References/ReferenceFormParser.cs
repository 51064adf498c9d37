using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Globalization;
using System.Linq;
using InscriptionLab.Measures;
using InscriptionLab.Readings;

namespace InscriptionLab.References;

/// <summary>Understands the rows of a list, whatever file they came from. The spelling of a form is kept as written, but for composition (NFC).</summary>
internal sealed class ReferenceFormParser(ReferenceListReaderOptions options, ReferenceFaults faults)
{
    internal ImmutableArray<ReferenceForm> Parse(IEnumerable<ReferenceRow> rows)
    {
        var forms = ImmutableArray.CreateBuilder<ReferenceForm>();
        var firstPlaces = new Dictionary<(string, string, AttestationStatus), string>();
        foreach (var row in rows)
        {
            if (Parse(row) is not { } form)
            {
                continue;
            }

            if (!firstPlaces.TryAdd((form.Form, form.Maker, form.Status), row.Place))
            {
                faults.Warn(row.Place, $"same form, maker and status as {firstPlaces[(form.Form, form.Maker, form.Status)]}; both are kept.");
            }

            forms.Add(form);
        }

        return forms.ToImmutable();
    }

    private ReferenceForm? Parse(ReferenceRow row)
    {
        var form = Form(row);
        var maker = row.Trimmed(ReferenceField.Maker);
        if (maker is null)
        {
            faults.Error(row.Place, ReferenceField.Maker, "is empty; give the name of the house that the form names.");
        }

        var status = Word(row, ReferenceField.Status, ReferenceField.Statuses);
        if (row.Trimmed(ReferenceField.Status) is null)
        {
            faults.Error(row.Place, ReferenceField.Status, $"is empty; give one of {List(ReferenceField.Statuses.Select(known => known.Word))}.");
        }

        var from = Year(row, ReferenceField.From);
        var to = Year(row, ReferenceField.To);
        if (from > to)
        {
            faults.Error(row.Place, ReferenceField.To, string.Create(CultureInfo.InvariantCulture, $"{to} is before the first year, {from}."));
        }

        var parsed = new ReferenceForm(form ?? string.Empty, maker ?? string.Empty, status ?? default)
        {
            Style = Style(row),
            Address = row.Trimmed(ReferenceField.Address),
            From = from,
            To = to,
            Source = row.Trimmed(ReferenceField.Source),
            Note = row.Trimmed(ReferenceField.Note),
            SignaturePosition = row.Trimmed(ReferenceField.SignaturePosition),
            SignatureDirection = Word(row, ReferenceField.SignatureDirection, ReferenceField.Directions),
            Layout = Word(row, ReferenceField.Layout, ReferenceField.Layouts),
            Certainty = Word(row, ReferenceField.Certainty, ReferenceField.Certainties),
            Partners = row.Trimmed(ReferenceField.Partners),
            SuccessorOf = row.Trimmed(ReferenceField.SuccessorOf),
            Wording = row.Trimmed(ReferenceField.Wording),
            LetterHeight = Value(row, ReferenceField.LetterHeight, options.SmallestLetter.Millimetres, options.LargestLetter.Millimetres, "2.4 (millimetres)") is { } height ? Length.FromMillimetres(height) : null,
            LetterSpacing = Value(row, ReferenceField.LetterSpacing, options.ClosestLetters, options.WidestLetters, "0.85 (letter to letter over the height of a capital)"),
        };
        return form is null || maker is null || status is null ? null : parsed;
    }

    private string? Form(ReferenceRow row)
    {
        var written = row[ReferenceField.Form];
        if (string.IsNullOrWhiteSpace(written))
        {
            faults.Error(row.Place, ReferenceField.Form, "is empty; give the spelling exactly as it is cut.");
            return null;
        }

        if (written.Any(char.IsControl))
        {
            faults.Error(row.Place, ReferenceField.Form, "holds a line break or another control character; write a mark of several lines as one line with spaces.");
            return null;
        }

        var form = CanonicalComposition.Compose(written);
        var letters = Graphemes.Of(form).Count;
        if (letters > options.MaximumFormLetters)
        {
            faults.Error(row.Place, ReferenceField.Form, string.Create(CultureInfo.InvariantCulture, $"has {letters} letters, more than {options.MaximumFormLetters}; look for a missing quotation mark or delimiter."));
            return null;
        }

        if (form.Trim().Length != form.Length)
        {
            faults.Warn(row.Place, "the form begins or ends with a space, which is kept as written.");
        }

        return form;
    }

    private string? Style(ReferenceRow row)
    {
        var style = row.Trimmed(ReferenceField.Style);
        if (style is null)
        {
            return null;
        }

        var known = ReferenceField.Styles.FirstOrDefault(word => word.Equals(style, StringComparison.OrdinalIgnoreCase));
        if (known is null)
        {
            faults.Error(row.Place, ReferenceField.Style, $"'{style}' is not one of {List(ReferenceField.Styles)}.");
        }

        return known;
    }

    private int? Year(ReferenceRow row, string field)
    {
        if (row.Trimmed(field) is not { } written)
        {
            return null;
        }

        if (int.TryParse(written, NumberStyles.None, CultureInfo.InvariantCulture, out var year) && year >= options.MinimumYear && year <= options.MaximumYear)
        {
            return year;
        }

        faults.Error(row.Place, field, string.Create(CultureInfo.InvariantCulture, $"'{written}' is not a year from {options.MinimumYear} to {options.MaximumYear}."));
        return null;
    }

    private double? Value(ReferenceRow row, string field, double least, double most, string example)
    {
        if (row.Trimmed(field) is not { } written)
        {
            return null;
        }

        if (double.TryParse(written, NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent, CultureInfo.InvariantCulture, out var value) && value >= least && value <= most)
        {
            return value;
        }

        faults.Error(row.Place, field, string.Create(CultureInfo.InvariantCulture, $"'{written}' is not a number from {least} to {most}, written with a point and without a unit, such as {example}."));
        return null;
    }

    private T? Word<T>(ReferenceRow row, string field, ImmutableArray<(string Word, T Value)> words)
        where T : struct
    {
        if (row.Trimmed(field) is not { } written)
        {
            return null;
        }

        foreach (var (word, value) in words)
        {
            if (word.Equals(written, StringComparison.OrdinalIgnoreCase))
            {
                return value;
            }
        }

        faults.Error(row.Place, field, $"'{written}' is not one of {List(words.Select(known => known.Word))}.");
        return null;
    }

    private static string List(IEnumerable<string> words) => string.Join(", ", words);
}

using System.Collections.Generic;
using System.Globalization;
using System.Linq;

namespace InscriptionLab.References;

/// <summary>Writes the fields of a row as a list file has them; a field that is not given is not among them.</summary>
internal static class ReferenceFieldText
{
    internal static IEnumerable<(string Field, string Text)> Of(ReferenceForm form)
    {
        (string, string?)[] fields =
        [
            (ReferenceField.Form, form.Form),
            (ReferenceField.Maker, form.Maker),
            (ReferenceField.Status, Word(ReferenceField.Statuses, form.Status)),
            (ReferenceField.Style, form.Style),
            (ReferenceField.Address, form.Address),
            (ReferenceField.From, form.From?.ToString(CultureInfo.InvariantCulture)),
            (ReferenceField.To, form.To?.ToString(CultureInfo.InvariantCulture)),
            (ReferenceField.Source, form.Source),
            (ReferenceField.Note, form.Note),
            (ReferenceField.SignaturePosition, form.SignaturePosition),
            (ReferenceField.SignatureDirection, form.SignatureDirection is { } direction ? Word(ReferenceField.Directions, direction) : null),
            (ReferenceField.Layout, form.Layout is { } layout ? Word(ReferenceField.Layouts, layout) : null),
            (ReferenceField.Certainty, form.Certainty is { } certainty ? Word(ReferenceField.Certainties, certainty) : null),
            (ReferenceField.Partners, form.Partners),
            (ReferenceField.SuccessorOf, form.SuccessorOf),
            (ReferenceField.Wording, form.Wording),
            (ReferenceField.LetterHeight, form.LetterHeight?.Millimetres.ToString(CultureInfo.InvariantCulture)),
            (ReferenceField.LetterSpacing, form.LetterSpacing?.ToString(CultureInfo.InvariantCulture)),
        ];
        return from field in fields where field.Item2 is not null select (field.Item1, field.Item2);
    }

    private static string Word<T>(IEnumerable<(string Word, T Value)> words, T value) => words.First(known => EqualityComparer<T>.Default.Equals(known.Value, value)).Word;
}

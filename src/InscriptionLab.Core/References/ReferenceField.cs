using System.Collections.Immutable;

namespace InscriptionLab.References;

/// <summary>Names of the fields of a reference list, the same in CSV (columns) and JSON (keys), and the words that some of them may hold.</summary>
internal static class ReferenceField
{
    internal const string Form = "form";
    internal const string Maker = "maker";
    internal const string Status = "status";
    internal const string Style = "style";
    internal const string Address = "address";
    internal const string From = "from";
    internal const string To = "to";
    internal const string Source = "source";
    internal const string Note = "note";
    internal const string SignaturePosition = "signature_position";
    internal const string SignatureDirection = "signature_direction";
    internal const string Layout = "layout";
    internal const string Certainty = "certainty";
    internal const string Partners = "partners";
    internal const string SuccessorOf = "successor_of";
    internal const string Wording = "wording";
    internal const string LetterHeight = "letter_height_mm";
    internal const string LetterSpacing = "letter_spacing";

    internal static ImmutableArray<string> Required { get; } = [Form, Maker, Status];

    internal static ImmutableArray<string> All { get; } =
    [
        Form, Maker, Status, Style, Address, From, To, Source, Note,
        SignaturePosition, SignatureDirection, Layout, Certainty, Partners, SuccessorOf, Wording,
        LetterHeight, LetterSpacing,
    ];

    internal static FieldNames Names { get; } = new(All, Required);

    internal static ImmutableArray<string> Years { get; } = [From, To];

    /// <summary>Gets the fields that hold measured values, numbers with a point.</summary>
    internal static ImmutableArray<string> Values { get; } = [LetterHeight, LetterSpacing];

    internal static ImmutableArray<string> Styles { get; } = ["roman", "italic", "script", "blackletter", "didone", "sans"];

    internal static ImmutableArray<(string Word, AttestationStatus Value)> Statuses { get; } =
        [("attested", AttestationStatus.Attested), ("period-copy", AttestationStatus.PeriodCopy), ("reproduction", AttestationStatus.Reproduction)];

    internal static ImmutableArray<(string Word, SignatureDirection Value)> Directions { get; } =
    [
        ("toward-eyepiece", References.SignatureDirection.TowardEyepiece),
        ("toward-objective", References.SignatureDirection.TowardObjective),
        ("around", References.SignatureDirection.Around),
    ];

    internal static ImmutableArray<(string Word, FormLayout Value)> Layouts { get; } =
        [("one-line", FormLayout.OneLine), ("name-over-place", FormLayout.NameOverPlace), ("several-lines", FormLayout.SeveralLines)];

    internal static ImmutableArray<(string Word, FormCertainty Value)> Certainties { get; } =
        [("certain", FormCertainty.Certain), ("probable", FormCertainty.Probable), ("possible", FormCertainty.Possible)];
}

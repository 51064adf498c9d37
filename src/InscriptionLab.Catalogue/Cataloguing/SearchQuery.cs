using System;

namespace InscriptionLab.Cataloguing;

/// <summary>What is looked for; every condition that is given must hold.</summary>
public sealed record SearchQuery
{
    /// <summary>Gets a piece of the lettering; capitals, marks above letters and long s make no difference.</summary>
    public string? Text { get; init; }

    /// <summary>Gets a piece of lettering that may be spelt otherwise in up to <see cref="Edits"/> letters.</summary>
    public string? Near { get; init; }

    /// <summary>Gets how many letters may differ, be missing or be too many.</summary>
    /// <value>Default 2: two letters in a maker's name.</value>
    public int Edits { get; init; } = 2;

    /// <summary>Gets a word with unknown letters: <c>?</c> or <c>.</c> is any one letter, <c>*</c> any letters, none included.</summary>
    public string? Pattern { get; init; }

    /// <summary>Gets a value indicating whether a letter also matches where it is only one of the alternatives of the reading.</summary>
    public bool Alternatives { get; init; }

    /// <summary>Gets a piece of the nearest form's maker.</summary>
    public string? Maker { get; init; }

    /// <summary>Gets the finding.</summary>
    public string? Outcome { get; init; }

    /// <summary>Gets the earliest time of the examination.</summary>
    public DateTimeOffset? From { get; init; }

    /// <summary>Gets the time before which the examination was made.</summary>
    public DateTimeOffset? Before { get; init; }

    /// <summary>Gets what was measured, where a size is asked for.</summary>
    /// <value>Default outer.</value>
    public string Role { get; init; } = "outer";

    /// <summary>Gets the smallest diameter in millimetres; a measurement whose interval reaches it counts.</summary>
    public double? FromMm { get; init; }

    /// <summary>Gets the largest diameter in millimetres; a measurement whose interval reaches it counts.</summary>
    public double? ToMm { get; init; }

    /// <summary>Gets a question of the checklist that was answered on the object itself.</summary>
    public string? Feature { get; init; }

    /// <summary>Gets the answer to <see cref="Feature"/>; null for any.</summary>
    public string? Answer { get; init; }

    /// <summary>Gets the first of the years asked for; what was seen on the object must tell of years, and none of it may lie wholly outside them.</summary>
    public int? FromYear { get; init; }

    /// <summary>Gets the last of the years asked for; see <see cref="FromYear"/>.</summary>
    public int? ToYear { get; init; }

    /// <summary>Gets the object; null for all.</summary>
    public string? ObjectKey { get; init; }

    /// <summary>Gets a value indicating whether the trash is searched, and only that.</summary>
    public bool InTrash { get; init; }

    /// <summary>Gets how many results at most.</summary>
    /// <value>Default 100.</value>
    public int Most { get; init; } = 100;
}

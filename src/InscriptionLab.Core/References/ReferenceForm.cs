using InscriptionLab.Measures;

namespace InscriptionLab.References;

/// <summary>One row of a reference list: one way in which one maker's mark is spelt.</summary>
/// <param name="Form">Exact spelling and case, one line of lettering.</param>
/// <param name="Maker">The house the form names.</param>
/// <param name="Status">What the form is evidence of.</param>
public sealed record ReferenceForm(string Form, string Maker, AttestationStatus Status)
{
    /// <summary>Gets the lettering style of the form (roman, italic, script, blackletter, didone, sans); null where unknown.</summary>
    public string? Style { get; init; }

    /// <summary>Gets the address that goes with the form; null where unknown.</summary>
    public string? Address { get; init; }

    /// <summary>Gets the first year of use; null where unknown.</summary>
    public int? From { get; init; }

    /// <summary>Gets the last year of use; null where unknown.</summary>
    public int? To { get; init; }

    /// <summary>Gets where the row comes from; null where not given.</summary>
    public string? Source { get; init; }

    /// <summary>Gets remarks; null where none.</summary>
    public string? Note { get; init; }

    /// <summary>Gets where on the instrument the house signed; null where unknown.</summary>
    public string? SignaturePosition { get; init; }

    /// <summary>Gets how the signature runs on the tube; null where unknown.</summary>
    public SignatureDirection? SignatureDirection { get; init; }

    /// <summary>Gets how the words are laid out; null where unknown.</summary>
    public FormLayout? Layout { get; init; }

    /// <summary>Gets how sure the compiler of the list is of the row; null where not given.</summary>
    public FormCertainty? Certainty { get; init; }

    /// <summary>Gets the partners who traded under the form; null where unknown or none.</summary>
    public string? Partners { get; init; }

    /// <summary>Gets the house that this one succeeded; null where unknown or none.</summary>
    public string? SuccessorOf { get; init; }

    /// <summary>Gets words that the house cut beside the form ("Day or Night"); the row's years are theirs too; null where unknown or none.</summary>
    public string? Wording { get; init; }

    /// <summary>Gets the height of the tallest letter on the metal, a capital where there is one; null where unknown.</summary>
    public Length? LetterHeight { get; init; }

    /// <summary>
    /// Gets the distance from letter to letter over the height of a capital, a pure number: inside the words, from the middle of the first letter to the middle of the
    /// last, over the number of steps between them; null where unknown.
    /// </summary>
    public double? LetterSpacing { get; init; }
}

using System.Collections.Immutable;

namespace InscriptionLab.Surveys;

/// <summary>One file in the tables of a survey.</summary>
/// <param name="File">Path as found.</param>
/// <param name="Sha256">Hash of its bytes; empty where they could not be read.</param>
/// <param name="ObjectKey">The object it shows.</param>
/// <param name="OfferedAs">Name under which the object is offered; empty where unknown.</param>
/// <param name="Outcome">agrees, differs, undecided, nothing-read, or unusable.</param>
/// <param name="Text">Lines parted by " / ".</param>
/// <param name="NearestForm">The nearest form; empty where there is none.</param>
/// <param name="NearestMaker">The house that it names.</param>
/// <param name="NearestStatus">attested, period-copy or reproduction.</param>
/// <param name="SameAs">First file with the same bytes; empty where this is it.</param>
/// <param name="NearlySameAs">First file that looks nearly the same; empty where this is it.</param>
/// <param name="Warnings">Sentences for the user; why the file is unusable where it is.</param>
internal sealed record SurveyRow(
    string File,
    string Sha256,
    string ObjectKey,
    string OfferedAs,
    string Outcome,
    string Text,
    string NearestForm,
    string NearestMaker,
    string NearestStatus,
    string SameAs,
    string NearlySameAs,
    ImmutableArray<string> Warnings)
{
    /// <summary>Word for a file that could not be examined.</summary>
    internal const string Unusable = "unusable";

    /// <summary>Gets the columns' names.</summary>
    internal static ImmutableArray<string> Columns { get; } =
        ["file", "sha256", "object", "offered_as", "outcome", "text", "nearest_form", "nearest_maker", "nearest_status", "same_as", "nearly_same_as", "warnings"];

    /// <summary>Gets the columns' values, in the order of their names.</summary>
    internal ImmutableArray<string> Values =>
        [File, Sha256, ObjectKey, OfferedAs, Outcome, Text, NearestForm, NearestMaker, NearestStatus, SameAs, NearlySameAs, string.Join(' ', Warnings)];
}

using System.Collections.Immutable;
using InscriptionLab.Cataloguing;

namespace InscriptionLab.Surveys;

/// <summary>What one photo gave.</summary>
/// <param name="Outcome">agrees, differs, undecided or nothing-read.</param>
/// <param name="Text">Lines parted by " / ".</param>
/// <param name="NearestForm">The nearest form; empty where there is none.</param>
/// <param name="NearestMaker">The house that it names.</param>
/// <param name="NearestStatus">attested, period-copy or reproduction.</param>
/// <param name="Warnings">Sentences for the user.</param>
/// <param name="PerceptualHash">See <see cref="Likeness.PerceptualHash"/>.</param>
/// <param name="Record">The JSON record of the photo.</param>
/// <param name="Thumbnail">A small JPEG.</param>
/// <param name="Entry">What a catalogue keeps of it; null for an examiner that keeps nothing.</param>
public sealed record PhotoResult(
    string Outcome,
    string Text,
    string NearestForm,
    string NearestMaker,
    string NearestStatus,
    ImmutableArray<string> Warnings,
    ulong PerceptualHash,
    string Record,
    ImmutableArray<byte> Thumbnail,
    CatalogueEntry? Entry = null);

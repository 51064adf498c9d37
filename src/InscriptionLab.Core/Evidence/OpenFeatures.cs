using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Findings;
using InscriptionLab.References;

namespace InscriptionLab.Evidence;

/// <summary>Everything that could still be looked at and speaks for one of the three propositions. Words of late years and a year in the mark are not among them: that they are missing proves nothing, and they cannot be asked for.</summary>
/// <param name="finding">The finding; it names a house.</param>
/// <param name="attested">Attested rows of the house.</param>
/// <param name="items">What was seen.</param>
/// <param name="dating">The years.</param>
/// <param name="options">Bounds.</param>
internal sealed class OpenFeatures(Finding finding, ReferenceForm[] attested, ImmutableArray<EvidenceItem> items, Dating dating, EvidenceOptions options)
{
    internal IEnumerable<OpenFeature> All() =>
    [
        .. Spelling(),
        .. Unseen("style", "the style of the lettering, in a photo that shows whole letters large", attested.Any(row => row.Style is not null)),
        .. Unseen("direction", "how the signature runs: round the tube, or with its last letter toward the eyepiece or toward the objective", attested.Any(row => row.SignatureDirection is not null)),
        .. Unseen("position", "on which part the signature stands", attested.Any(row => row.SignaturePosition is not null)),
        .. Unseen("letter-height", "the height of the tallest letter, by calipers or in a photo with a scale beside the tube", attested.Any(row => row.LetterHeight is not null)),
        .. Unseen("address", "whether an address is cut anywhere on the piece", attested.Any(row => row.Address is not null), options.AddressShare),
        .. Unseen("construction", "any question of the checklist that tells of years", dating.Statements.Any(statement => statement.Kind is DateKind.Form or DateKind.Address)),
        .. Unseen("measures", "the diameters of the piece, by calipers", true),
    ];

    /// <summary>A spelling that the photo leaves open: which it is, each as probable as the photo makes it.</summary>
    private IEnumerable<OpenFeature> Spelling() => items.Any(item => item.Weight is { Feature: "spelling", Observation: "open" })
        ? [new OpenFeature("a nearer or better lit photo of the letters that this one leaves open", "spelling", SpellingEvidence.Answers(finding, attested.Length), 1)]
        : [];

    private IEnumerable<OpenFeature> Unseen(string feature, string what, bool isListed, double share = 1) => isListed && items.All(item => item.Weight.Feature != feature)
        ? [new OpenFeature(what, feature, [.. EvidenceTables.Weights.Where(weight => weight.Feature == feature).Select(weight => (weight, 1.0))], share)]
        : [];
}

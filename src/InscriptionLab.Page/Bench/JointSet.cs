using InscriptionLab.App.Examining;

namespace InscriptionLab.Page.Bench;

/// <summary>One set of photos read together.</summary>
/// <param name="Key">Changes whenever the joint reading does; part of addresses.</param>
/// <param name="Examination">What they gave.</param>
internal sealed record JointSet(string Key, SetExamination Examination);

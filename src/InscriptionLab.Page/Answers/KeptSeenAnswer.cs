using System;

namespace InscriptionLab.Page.Answers;

/// <summary>What a person saw on an object itself.</summary>
/// <param name="Words">Question and answer.</param>
/// <param name="Years">Years that the answer tells of; empty where it tells of none.</param>
/// <param name="Source">What the years rest on.</param>
/// <param name="Person">Who saw it.</param>
/// <param name="At">When.</param>
internal sealed record KeptSeenAnswer(string Words, string Years, string Source, string Person, DateTimeOffset At);

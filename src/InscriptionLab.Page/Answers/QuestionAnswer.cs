using System.Collections.Immutable;

namespace InscriptionLab.Page.Answers;

/// <summary>One question of the checklist of construction.</summary>
/// <param name="Feature">Its name.</param>
/// <param name="Question">The question in words.</param>
/// <param name="Part">The part of the instrument.</param>
/// <param name="Choices">The answers that it may have; none where a number or words are written.</param>
internal sealed record QuestionAnswer(string Feature, string Question, string Part, ImmutableArray<ChoiceAnswer> Choices);

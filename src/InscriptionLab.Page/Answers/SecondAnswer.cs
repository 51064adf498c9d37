using System.Collections.Immutable;

namespace InscriptionLab.Page.Answers;

/// <summary>What the second reader made of a line.</summary>
/// <param name="Reader">Its name.</param>
/// <param name="Text">What it reads.</param>
/// <param name="Agrees">For each letter of the first reading, whether the second has the same.</param>
internal sealed record SecondAnswer(string Reader, string Text, ImmutableArray<bool> Agrees);

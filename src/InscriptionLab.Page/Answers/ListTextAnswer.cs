using System.Collections.Immutable;

namespace InscriptionLab.Page.Answers;

/// <summary>A reference list as text.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Columns">Names of the columns.</param>
/// <param name="Words">Words that a column may hold, for each column that holds no free text.</param>
/// <param name="Rows">Its forms, a text for each column.</param>
/// <param name="Warnings">What the reader remarked.</param>
internal sealed record ListTextAnswer(string Name, ImmutableArray<string> Columns, ImmutableDictionary<string, ImmutableArray<string>> Words, ImmutableArray<ImmutableArray<string>> Rows, ImmutableArray<string> Warnings);

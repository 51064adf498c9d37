using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Readings;

namespace InscriptionLab.Page.Bench;

/// <summary>A line with what persons did to it.</summary>
/// <param name="Id">Name of the line: stays the same while its box and letters are corrected.</param>
/// <param name="Reading">The line as it stands.</param>
/// <param name="Letters">For each letter, the person who read it; null where the program did.</param>
/// <param name="Box">The person who drew the line's box; null where the program found it.</param>
/// <param name="Basis">What the letters stand on.</param>
/// <param name="Ids">Names of the letters: a letter keeps its name while others are split or taken away.</param>
/// <param name="Program">The line as the program read it.</param>
internal sealed record WorkedLine(string Id, LineReading Reading, ImmutableArray<HandMark?> Letters, HandMark? Box, string Basis, ImmutableArray<int> Ids, LineReading Program)
{
    /// <summary>Gets a value indicating whether a person read one of the letters.</summary>
    internal bool HasHandLetters => Letters.Any(mark => mark is not null);

    internal static WorkedLine Found(string id, LineReading reading, HandMark? box, string basis) =>
        new(id, reading, [.. Enumerable.Repeat<HandMark?>(null, reading.Letters.Length)], box, basis, [.. Enumerable.Range(0, reading.Letters.Length)], reading);
}

using System.Collections.Immutable;

namespace InscriptionLab.Comparison;

/// <summary>A form laid over a part of a window at the least cost.</summary>
/// <param name="Window">The window.</param>
/// <param name="Form">The form.</param>
/// <param name="Start">First position of the part.</param>
/// <param name="End">Position behind the part.</param>
/// <param name="Cost">Sum of the costs of all steps, in letters.</param>
/// <param name="Steps">Steps in reading order.</param>
internal sealed record Alignment(LetterWindow Window, IndexedForm Form, int Start, int End, double Cost, ImmutableArray<AlignmentStep> Steps)
{
    /// <summary>Gets a value indicating whether the part holds letters, of the first and of the last line of the window: a shorter window has the rest.</summary>
    internal bool IsWhole => End > Start && (Window.Places[Start].Line, Window.Places[End - 1].Line) == (Window.Places[0].Line, Window.Places[^1].Line);
}

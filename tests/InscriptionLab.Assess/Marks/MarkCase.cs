namespace InscriptionLab.Assess.Marks;

/// <summary>One line as the program found it in a photo, with what it is in truth.</summary>
/// <param name="File">The photo.</param>
/// <param name="Piece">The photo's set, or the photo itself where it belongs to none: photos of one set show one piece.</param>
/// <param name="Line">Number of the line that was cut, from 0.</param>
/// <param name="Words">Its words.</param>
/// <param name="Embedding">What likeness compares.</param>
internal sealed record MarkCase(string File, string Piece, int Line, string Words, sbyte[] Embedding);

namespace InscriptionLab.Page.Answers;

/// <summary>Something that a person does in the catalogue.</summary>
/// <param name="Person">Who.</param>
/// <param name="Text">What it is done to, or what a line becomes.</param>
/// <param name="Line">The line, from 0, where it is done to one.</param>
internal sealed record HandRequest(string? Person, string? Text, int Line);

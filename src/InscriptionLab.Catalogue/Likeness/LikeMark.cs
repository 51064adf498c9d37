namespace InscriptionLab.Likeness;

/// <summary>A mark like another.</summary>
/// <param name="Id">Number of the mark.</param>
/// <param name="Likeness">Cosine of the angle between the embeddings: 1 for the same picture, about 0 for unlike ones.</param>
public sealed record LikeMark(long Id, float Likeness);

namespace InscriptionLab.Page.Answers;

/// <summary>What became of photos that were to be kept.</summary>
/// <param name="Added">Photos that were added.</param>
/// <param name="Photos">Photos of the piece; those not added were there already.</param>
internal sealed record KeptAnswer(int Added, int Photos);

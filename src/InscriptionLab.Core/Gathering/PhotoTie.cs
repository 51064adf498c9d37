namespace InscriptionLab.Gathering;

/// <summary>Why two photos belong together.</summary>
/// <param name="First">Place of the one photo, from 0.</param>
/// <param name="Second">Place of the other.</param>
/// <param name="SameView">True where both show the tube in the same position, false where it was turned between them.</param>
/// <param name="Reason">What shows it, as a clause: "line 'X' stands at the same place in both".</param>
public sealed record PhotoTie(int First, int Second, bool SameView, string Reason);

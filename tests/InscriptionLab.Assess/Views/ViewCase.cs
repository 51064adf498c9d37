namespace InscriptionLab.Assess.Views;

/// <summary>One photo as it is, turned upside down, mirrored, or both.</summary>
/// <param name="File">The photo.</param>
/// <param name="UpsideDown">True where the lettering stands upside down in the picture examined.</param>
/// <param name="Mirrored">True where the picture examined is mirrored.</param>
/// <param name="RunsAround">True where the lettering runs round the tube, where neither way is upside down.</param>
/// <param name="Read">Lines that were read.</param>
/// <param name="SaidUpsideDown">Lines of them said to stand upside down.</param>
/// <param name="SaidMirrored">Lines of them said to be mirrored.</param>
/// <param name="Errors">Character errors.</param>
/// <param name="Letters">Letters cut.</param>
internal sealed record ViewCase(string File, bool UpsideDown, bool Mirrored, bool RunsAround, int Read, int SaidUpsideDown, int SaidMirrored, int Errors, int Letters)
{
    /// <summary>Gets a value indicating whether every line read is said to stand as it stands.</summary>
    internal bool Right => Read > 0
        && SaidMirrored == (Mirrored ? Read : 0)
        && (RunsAround || SaidUpsideDown == (UpsideDown ? Read : 0));
}

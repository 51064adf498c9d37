namespace InscriptionLab.Page.Tests;

/// <summary>A page with a catalogue of ten thousand invented pieces.</summary>
public sealed class ManyPieces : OpenCatalogue
{
    /// <inheritdoc/>
    protected override int Pieces => 10_000;
}

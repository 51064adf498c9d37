using System.Collections.Immutable;

namespace InscriptionLab.Vision.Models;

/// <summary>What models.json says of one model file; empty or zero where it does not apply.</summary>
/// <param name="File">File name in the models folder.</param>
/// <param name="Sha256">SHA-256 of the file, 64 hexadecimal digits.</param>
/// <param name="Classes">Character of each class of a reader, the blank included as the empty string.</param>
/// <param name="Blank">Index of the blank class.</param>
/// <param name="Styles">Lettering styles in the order of the style output.</param>
/// <param name="Temperature">Calibrated temperature of the reader's posteriors.</param>
internal sealed record ModelCard(
    string File,
    string Sha256,
    ImmutableArray<string> Classes,
    int Blank,
    ImmutableArray<string> Styles,
    double Temperature);

using System;

namespace InscriptionLab.Page.Assets;

/// <summary>One file of the page.</summary>
/// <param name="Bytes">What is in it.</param>
/// <param name="ContentType">What it is.</param>
/// <param name="Tag">Changes whenever the bytes do.</param>
internal sealed record PageAsset(ReadOnlyMemory<byte> Bytes, string ContentType, string Tag);

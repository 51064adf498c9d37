namespace InscriptionLab.App.Records;

/// <summary>The flat face of a ring that the lettering runs round.</summary>
/// <param name="Rim">Its outer rim.</param>
/// <param name="Opening">Its opening, or how far in a closed face was looked at.</param>
/// <param name="Tops">Where the tops of the letters point: outward (the text reads clockwise), inward, both where lines differ, none where nothing was read on it.</param>
/// <param name="ByHand">True where a person marked it.</param>
internal sealed record RingRecord(EllipseRecord Rim, EllipseRecord Opening, string Tops, bool ByHand);

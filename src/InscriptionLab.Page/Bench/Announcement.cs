namespace InscriptionLab.Page.Bench;

/// <summary>Something changed; the page fetches what it shows of it.</summary>
/// <param name="Kind">piece, bench, references or dataset.</param>
/// <param name="Piece">The piece; empty where none is meant.</param>
/// <param name="Version">Version of the piece.</param>
internal sealed record Announcement(string Kind, string Piece, int Version);

namespace InscriptionLab.Cataloguing;

/// <summary>What made a record, so that it can be made again.</summary>
/// <param name="Program">Name and version of the program.</param>
/// <param name="Model">Name and version of the reader; "none" where nothing was read.</param>
/// <param name="List">Name of the reference list; empty where none was used.</param>
/// <param name="ListSha256">SHA-256 of the list; empty where none was used.</param>
public sealed record EntryVersions(string Program, string Model, string List, string ListSha256);

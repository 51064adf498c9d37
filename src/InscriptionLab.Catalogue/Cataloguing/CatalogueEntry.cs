using System;
using System.Collections.Immutable;

namespace InscriptionLab.Cataloguing;

/// <summary>One piece of work to be kept.</summary>
/// <param name="Kind">See <see cref="EntryKind"/>.</param>
/// <param name="ObjectKey">Name of the object; the photo's hash where the user names none.</param>
/// <param name="Photo">The photo.</param>
/// <param name="Versions">What made it.</param>
/// <param name="MadeAt">When it was made.</param>
/// <param name="Record">The JSON record exactly as the program writes it, one object.</param>
/// <param name="Marks">Pictures of the record's lines, as far as they are to be kept.</param>
/// <param name="Measurements">Measured diameters.</param>
/// <param name="OfferedAs">Name under which the object is offered; null where unknown.</param>
public sealed record CatalogueEntry(
    string Kind,
    string ObjectKey,
    PhotoFacts Photo,
    EntryVersions Versions,
    DateTimeOffset MadeAt,
    string Record,
    ImmutableArray<MarkEntry> Marks,
    ImmutableArray<MeasurementEntry> Measurements,
    string? OfferedAs = null)
{
    /// <summary>Gets pictures of photos read together.</summary>
    public ImmutableArray<PictureEntry> Pictures { get; init; } = [];

    /// <summary>Gets what persons read letter by letter before the work was kept, in words; empty where they read nothing. The same photo with other letters is other work.</summary>
    public string Hands { get; init; } = string.Empty;
}

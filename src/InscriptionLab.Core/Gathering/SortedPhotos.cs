using System.Collections.Immutable;

namespace InscriptionLab.Gathering;

/// <summary>Photos that belong together.</summary>
/// <param name="Kind">Why they belong together.</param>
/// <param name="Photos">Places of the photos, ascending.</param>
/// <param name="Ties">The ties that hold them together.</param>
public sealed record SortedPhotos(SetKind Kind, ImmutableArray<int> Photos, ImmutableArray<PhotoTie> Ties);

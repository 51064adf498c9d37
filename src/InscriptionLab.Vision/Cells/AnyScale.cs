using System.Threading;
using InscriptionLab.Cells;
using InscriptionLab.Photos;
using InscriptionLab.Vision.Scales;

namespace InscriptionLab.Vision.Cells;

/// <summary>Finds the scale of a photo, whatever its kind.</summary>
internal static class AnyScale
{
    /// <summary>Finds the scale.</summary>
    /// <returns>The scale, or null where none is seen.</returns>
    internal static ScaleSighting? Find(Photo photo, ScaleRequest? request, CancellationToken cancel) =>
        request?.Kind == ScaleKind.Disc ? DiscFinder.Find(photo, request, cancel) : ScaleFinder.Find(photo.Gray, request, cancel);
}

using System.Linq;
using System.Threading;
using InscriptionLab.Cells;
using InscriptionLab.Cells.Fitting;
using InscriptionLab.Imaging;
using InscriptionLab.Measures;

namespace InscriptionLab.Vision.Scales;

/// <summary>Looks for the scale that the user names, or for each kind in turn.</summary>
internal static class ScaleFinder
{
    /// <summary>Kinds in the order in which they are looked for: the one hardest to mistake first.</summary>
    private static readonly IScaleReference[] References = [new CardReference(), new ArucoReference(), new CheckerboardReference(), new RuleReference(), new Id1Reference()];

    /// <summary>Finds the scale. Many a sheet and box has nearly the proportions of a bank card, so that one must be named.</summary>
    /// <returns>The scale, or null where none is seen.</returns>
    internal static ScaleSighting? Find(GrayImage image, ScaleRequest? request, CancellationToken cancel) => request?.Kind == ScaleKind.Points
        ? MarkedPoints.Sighting(request)
        : References
            .Where(r => request is null ? r.Kind != ScaleKind.Id1 : request.Kind == r.Kind)
            .Select(r => r.Find(image, request?.Size, cancel))
            .FirstOrDefault(s => s is not null);

    /// <summary>Gives a camera from which the scene's adjustment can start.</summary>
    internal static PlaneCamera StartCamera(ScaleSighting scale, double focal, PixelPoint principalPoint)
    {
        if (!scale.Round.IsEmpty)
        {
            return DiscStart(scale, focal, principalPoint);
        }

        var board = scale.Corners.Where(c => c.Board == 0).ToArray();
        var map = board.Length == 0 ? null : PlaneHomography.Fit([.. board.Select(c => new PixelPoint(c.X, c.Y))], [.. board.Select(c => c.At)]);
        return map?.ToCamera(focal, principalPoint) ?? RuleStart.Camera(scale, focal, principalPoint);
    }

    /// <summary>Gives a camera that looks straight at a disc, the world's origin in its middle.</summary>
    private static PlaneCamera DiscStart(ScaleSighting disc, double focal, PixelPoint principalPoint)
    {
        var middle = new PixelPoint(disc.Round.Average(p => p.X), disc.Round.Average(p => p.Y));
        var scale = disc.Round.Average(p => p.DistanceTo(middle).Pixels) / (disc.Size.Millimetres / 2);
        return new PlaneCamera(
            focal,
            principalPoint,
            new Vector3D(1, 0, 0),
            new Vector3D(0, 1, 0),
            new Vector3D(0, 0, 1),
            new Vector3D((middle.X - principalPoint.X) / scale, (middle.Y - principalPoint.Y) / scale, focal / scale));
    }
}

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
    private static readonly IScaleReference[] References = [new CardReference(), new ArucoReference(), new CheckerboardReference(), new RuleReference()];

    /// <summary>Finds the scale.</summary>
    /// <returns>The scale, or null where none is seen.</returns>
    internal static ScaleSighting? Find(GrayImage image, ScaleRequest? request, CancellationToken cancel) =>
        References
            .Where(r => request is null || request.Kind == r.Kind)
            .Select(r => r.Find(image, request?.Size, cancel))
            .FirstOrDefault(s => s is not null);

    /// <summary>Gives a camera from which the scene's adjustment can start.</summary>
    internal static PlaneCamera StartCamera(ScaleSighting scale, double focal, PixelPoint principalPoint)
    {
        var board = scale.Corners.Where(c => c.Board == 0).ToArray();
        var map = board.Length == 0 ? null : PlaneHomography.Fit([.. board.Select(c => new PixelPoint(c.X, c.Y))], [.. board.Select(c => c.At)]);
        return map?.ToCamera(focal, principalPoint) ?? RuleStart.Camera(scale, focal, principalPoint);
    }
}

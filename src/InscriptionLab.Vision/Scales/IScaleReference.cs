using System.Threading;
using InscriptionLab.Cells;
using InscriptionLab.Imaging;
using InscriptionLab.Measures;

namespace InscriptionLab.Vision.Scales;

/// <summary>Looks for one kind of scale.</summary>
internal interface IScaleReference
{
    /// <summary>Gets the kind it looks for.</summary>
    ScaleKind Kind { get; }

    /// <summary>Looks for the scale.</summary>
    /// <param name="image">Grey picture, upright.</param>
    /// <param name="size">Size of the scale's unit; null where the user did not give it.</param>
    /// <param name="cancel">Stops the search.</param>
    /// <returns>What is seen, or null where there is no such scale. Without a size the unit is taken as 1 mm and marked as assumed.</returns>
    ScaleSighting? Find(GrayImage image, Length? size, CancellationToken cancel);
}

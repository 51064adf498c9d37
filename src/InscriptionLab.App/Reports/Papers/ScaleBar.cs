using System.Linq;
using static InscriptionLab.App.Reports.Figures;

namespace InscriptionLab.App.Reports.Papers;

/// <summary>A bar of a round length.</summary>
/// <param name="Millimetres">Its length.</param>
internal sealed record ScaleBar(double Millimetres)
{
    /// <summary>Largest part of the picture's width that a bar takes.</summary>
    private const double Part = 0.35;

    private static readonly double[] Round = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500];

    internal string Text => Invariant($"{Millimetres:0.#} mm, in the plane of the rim");

    /// <summary>Gives the longest round bar that fits a picture so many millimetres wide; null where none does.</summary>
    internal static ScaleBar? For(double millimetresAcross) => Round.LastOrDefault(length => length <= millimetresAcross * Part) is > 0 and var length ? new ScaleBar(length) : null;
}

using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Cells;
using OpenCvSharp;
using OpenCvSharp.Aruco;

namespace InscriptionLab.Vision.Scales;

/// <summary>The pattern of one coded square of the scale card.</summary>
public static class MarkerPattern
{
    /// <summary>Cells along a side, the black border counted.</summary>
    public const int Cells = 6;

    /// <summary>Gives the cells row by row, true where black.</summary>
    /// <param name="marker">Number of the square on the card.</param>
    /// <exception cref="System.ArgumentOutOfRangeException">The card has no such square.</exception>
    public static ImmutableArray<bool> Of(int marker)
    {
        if (ScaleCard.PlaceOf(marker) is null)
        {
            throw new System.ArgumentOutOfRangeException(nameof(marker), marker, "The card has no such square.");
        }

        using var dictionary = CvAruco.GetPredefinedDictionary(PredefinedDictionaryType.Dict4X4_50);
        using var picture = new Mat();
        dictionary.GenerateImageMarker(marker, Cells, picture, 1);
        picture.GetArray(out byte[] levels);
        return [.. levels.Select(level => level < 128)];
    }
}

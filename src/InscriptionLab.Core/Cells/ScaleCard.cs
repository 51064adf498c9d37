using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Measures;

namespace InscriptionLab.Cells;

/// <summary>The printable scale card as it is meant: coded squares at known places, and a line whose printed length tells how true the printer is. X to the right and Y down in millimetres from the first square's outer corner.</summary>
public static class ScaleCard
{
    /// <summary>Side of one coded square in millimetres.</summary>
    public const double MarkerMillimetres = 10;

    /// <summary>Distance of neighbouring squares from middle to middle, in millimetres.</summary>
    public const double PitchMillimetres = 14;

    /// <summary>Number of the first square in the dictionary of 4 by 4 patterns; those after it follow row by row.</summary>
    public const int FirstMarker = 30;

    /// <summary>Squares in a row.</summary>
    public const int Columns = 6;

    /// <summary>Rows of squares.</summary>
    public const int Rows = 2;

    /// <summary>Gets the length of the check line on a card that is printed true.</summary>
    public static Length CheckLength { get; } = Length.FromMillimetres(100);

    /// <summary>Gets the numbers of all squares with the places of their first corners.</summary>
    public static ImmutableArray<(int Marker, double X, double Y)> Markers { get; } =
    [
        .. Enumerable.Range(0, Rows * Columns).Select(i => (FirstMarker + i, i % Columns * PitchMillimetres, i / Columns * PitchMillimetres)),
    ];

    /// <summary>Gives the place of a square's first corner, or null where the card has no such square.</summary>
    public static (double X, double Y)? PlaceOf(int marker) =>
        marker >= FirstMarker && marker < FirstMarker + Markers.Length ? (Markers[marker - FirstMarker].X, Markers[marker - FirstMarker].Y) : null;
}

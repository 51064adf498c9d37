using System.Collections.Immutable;

namespace InscriptionLab.Threads;

/// <summary>Standard series of screw threads with which a measured pitch is compared.</summary>
public static class ThreadSeries
{
    private const double MillimetresPerInch = 25.4;

    /// <summary>Gets turns to the inch of the British Standard Whitworth series (J. Whitworth, 1841; BS 84), from 1/16 to 2 inches.</summary>
    public static ImmutableArray<double> WhitworthTurns { get; } = [60, 48, 40, 32, 24, 20, 18, 16, 14, 12, 11, 10, 9, 8, 7, 6, 5, 4.5];

    /// <summary>Gets pitches of the ISO metric series in millimetres (ISO 261).</summary>
    public static ImmutableArray<double> MetricPitches { get; } = [0.2, 0.25, 0.3, 0.35, 0.4, 0.45, 0.5, 0.6, 0.7, 0.75, 0.8, 1, 1.25, 1.5, 1.75, 2, 2.5, 3];

    /// <summary>Turns to the inch of the microscope objective thread of the Royal Microscopical Society (1858; ISO 8038).</summary>
    public const double MicroscopeTurns = 36;

    /// <summary>Depth of a Whitworth thread (55 degrees, rounded) as a share of its pitch (BS 84).</summary>
    public const double WhitworthDepth = 0.640327;

    /// <summary>Gives the pitch in millimetres of so many turns to the inch.</summary>
    public static double PitchOfTurns(double turns) => MillimetresPerInch / turns;

    /// <summary>Gives the turns to the inch of a pitch in millimetres.</summary>
    public static double TurnsOfPitch(double millimetres) => MillimetresPerInch / millimetres;

    /// <summary>Gives effective and core diameter of a Whitworth thread of a major diameter, all in one unit, its pitch in that unit.</summary>
    public static (double Effective, double Core) Whitworth(double major, double pitch) => (major - (WhitworthDepth * pitch), major - (2 * WhitworthDepth * pitch));
}

using System;
using InscriptionLab.Measures;

namespace InscriptionLab.Optics;

/// <summary>What an aperture stop takes from the light of an objective. Terms after ISO 14132 (telescopic systems, vocabulary) and ISO 14490-1.</summary>
public static class ApertureStop
{
    /// <summary>Gives the width of the beam that a stop behind the objective lets in: its image in the objective, the entrance pupil where no other edge is narrower.</summary>
    /// <remarks>Similar triangles in the beam that closes towards the focus: d f / (f - x). For a thin objective and a distant object.</remarks>
    /// <param name="stop">Diameter of the stop itself.</param>
    /// <param name="focalLength">Focal length of the objective, above zero.</param>
    /// <param name="distance">Distance of the stop behind the objective, from zero to less than the focal length.</param>
    /// <exception cref="ArgumentOutOfRangeException">The focal length is not above zero, or the stop does not lie between objective and focus.</exception>
    public static Length SeenThroughObjective(Length stop, Length focalLength, Length distance) => stop * Enlargement(focalLength, distance);

    /// <summary>Gives the diameter of a stop itself whose image in the objective was measured through the glass.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The focal length is not above zero, or the stop does not lie between objective and focus.</exception>
    public static Length BehindObjective(Length seen, Length focalLength, Length distance) => seen * (1 / Enlargement(focalLength, distance));

    /// <summary>Gives the entrance pupil diameter: the narrower of clear aperture and stop as seen through the objective.</summary>
    public static Length EntrancePupil(Length clearAperture, Length? stopSeen) =>
        stopSeen is { } stop && stop < clearAperture ? stop : clearAperture;

    /// <summary>Gives the share of the light of the clear aperture that the stop leaves: the ratio of areas, at most one.</summary>
    public static double LightShare(Length clearAperture, Length stopSeen)
    {
        Positive.Check(clearAperture, nameof(clearAperture));
        Positive.Check(stopSeen, nameof(stopSeen));
        var ratio = Math.Min(1, stopSeen / clearAperture);
        return ratio * ratio;
    }

    /// <summary>Gives the light lost in photographic stops (halvings) for a share that is left.</summary>
    public static double StopsLost(double lightShare) => Math.Log2(1 / lightShare);

    private static double Enlargement(Length focalLength, Length distance)
    {
        Positive.Check(focalLength, nameof(focalLength));
        return distance.Millimetres >= 0 && distance < focalLength
            ? focalLength / (focalLength - distance)
            : throw new ArgumentOutOfRangeException(nameof(distance), distance, "A stop lies between the objective and its focus.");
    }
}

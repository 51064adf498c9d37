using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Cataloguing;

namespace InscriptionLab.Exchange;

/// <summary>One object of the catalogue with all that is known of it.</summary>
/// <param name="Key">Name of the object.</param>
/// <param name="Title">What the user calls it; null where not said.</param>
/// <param name="Note">The user's note; null where not said.</param>
/// <param name="OfferedAs">Name under which it is offered; null where unknown.</param>
/// <param name="Photos">Its photos.</param>
public sealed record ExchangeObject(string Key, string? Title, string? Note, string? OfferedAs, ImmutableArray<ExchangePhoto> Photos)
{
    /// <summary>Gets what persons saw on the object itself, in the order in which it was given.</summary>
    public ImmutableArray<ObservationEntry> Observations { get; init; } = [];

    /// <summary>Gets the title, or a plain one where the user gave none.</summary>
    public string ShownTitle => Title ?? $"Brass instrument part, {Key}";

    /// <summary>Gets every measurement of the object with the examination that made it.</summary>
    public ImmutableArray<(ExchangeExamination Examination, MeasurementEntry Measured)> Measurements =>
        [.. Photos.SelectMany(photo => photo.Measurements.Select(measured => (photo.Measuring!, measured)))];
}

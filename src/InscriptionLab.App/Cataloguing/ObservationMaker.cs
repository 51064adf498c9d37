using System;
using System.Linq;
using InscriptionLab.Cataloguing;
using InscriptionLab.Evidence;

namespace InscriptionLab.App.Cataloguing;

/// <summary>Turns answers of the checklist of construction into what the catalogue keeps with an object.</summary>
internal static class ObservationMaker
{
    /// <summary>Gives an answer with the years that the checklist has for it.</summary>
    /// <param name="table">The checklist that was answered.</param>
    /// <param name="feature">The question.</param>
    /// <param name="answer">The answer.</param>
    /// <param name="by">Who gave it.</param>
    /// <param name="at">When.</param>
    internal static ObservationEntry Of(ConstructionTable table, string feature, string answer, string by, DateTimeOffset at)
    {
        var row = table.Rows.FirstOrDefault(known => known.Feature == feature && known.Observation.Equals(answer, StringComparison.OrdinalIgnoreCase));
        return row is { IsDated: true }
            ? new ObservationEntry(feature, row.Observation, row.Years.From, row.Years.To, $"{row.Basis}: {row.Source}", by, at)
            : new ObservationEntry(feature, row?.Observation ?? answer, null, null, string.Empty, by, at);
    }
}

using System.Linq;
using System.Text;
using System.Text.Json.Nodes;
using InscriptionLab.Optics;
using static InscriptionLab.App.Reports.Figures;

namespace InscriptionLab.App.Reports;

/// <summary>What follows from a telescope's sizes, as plain text for the screen.</summary>
internal static class OpticsText
{
    private const int NameWidth = 50;

    /// <summary>Gives the same as a JSON object.</summary>
    internal static JsonObject Json(OpticsAccount account) => new()
    {
        ["figures"] = new JsonArray([.. account.Figures.Select(f => new JsonObject { ["name"] = f.Name, ["value"] = f.Value, ["unit"] = f.Unit, ["basis"] = f.Basis })]),
        ["day_or_night"] = account.DayNight is { } claim ? new JsonArray([.. claim.Reasons.Select(reason => (JsonNode)reason)]) : null,
        ["notes"] = new JsonArray([.. account.Notes.Select(note => (JsonNode)note)]),
    };

    internal static string Of(OpticsAccount account)
    {
        var text = new StringBuilder();
        foreach (var figure in account.Figures)
        {
            var unit = figure.Unit == "1" ? string.Empty : " " + figure.Unit;
            text.Append("  ").Append(figure.Name.PadRight(NameWidth)).Append(Invariant($"{figure.Value:0.###}{unit}")).Append("  (").Append(figure.Basis).Append(")\n");
        }

        if (account.DayNight is { } claim)
        {
            text.Append("  the words \"day or night\"\n");
            foreach (var reason in claim.Reasons)
            {
                text.Append("    ").Append(reason).Append('\n');
            }
        }

        foreach (var note in account.Notes)
        {
            text.Append("  mind       ").Append(note).Append('\n');
        }

        return text.Append("  caution    ").Append(Cautions.Sentences[0]).Append('\n').ToString();
    }
}

using System.Text.Json;
using System.Text.Json.Nodes;
using InscriptionLab.Likeness;
using InscriptionLab.Outcomes;

namespace InscriptionLab.Cataloguing;

/// <summary>Holds a row of an archive against what the program reads of it later: text that is JSON, pictures. The database itself takes any text.</summary>
internal static class ArchiveRow
{
    /// <summary>Checks a row.</summary>
    /// <param name="table">Its table.</param>
    /// <param name="row">The row.</param>
    /// <exception cref="InscriptionLabException">A value cannot be read.</exception>
    internal static void Check(string table, JsonObject row)
    {
        switch (table)
        {
            case "examinations":
                RecordContent.Parse(Text(row, "record"));
                break;
            case "lines":
                RecordLine.LettersOf(Text(row, "letters"));
                break;
            case "nearest_forms":
                RecordNearest.DifferencesOf(Text(row, "differences"));
                break;
            case "marks":
                GrayPng.Read(row["picture"]?.AsValue().GetValue<JsonElement>().GetBytesFromBase64());
                MarkEntry.BoxesOf(Text(row, "boxes"));
                break;
        }
    }

    private static string Text(JsonObject row, string column) => (string?)row[column] ?? string.Empty;
}

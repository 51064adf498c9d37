using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Text.Json.Nodes;
using System.Threading;
using System.Threading.Tasks;
using InscriptionLab.Files;
using InscriptionLab.Tables;

namespace InscriptionLab.Surveys;

/// <summary>Writes a survey's results: tables, records, counts and the overview. Each file is written beside its place and then moved there, so a table is always whole.</summary>
internal sealed class SurveyFolder(string folder, SurveyOptions options, SurveyJournal journal)
{
    /// <summary>Folder of the small pictures.</summary>
    internal const string Thumbnails = "thumbnails";

    /// <summary>Writes the small picture of a photo.</summary>
    internal static void WriteThumbnail(string folder, string sha256, ReadOnlySpan<byte> jpeg)
    {
        if (jpeg.Length > 0)
        {
            var file = Path.Combine(folder, Thumbnails, sha256 + ".jpg");
            WholeFile.Write(file, jpeg);
        }
    }

    /// <summary>Writes everything.</summary>
    /// <returns>How many files were unusable, how many had the bytes of another, and the counts.</returns>
    internal async Task<(int Unusable, int Same, ImmutableArray<FindingCount> Counts)> WriteAsync(ImmutableArray<SurveyFile> files, CancellationToken cancel)
    {
        var rows = new SurveyRows(files, journal, options);
        var findings = new ObjectFindings();
        var (unusable, same) = (0, 0);
        foreach (var row in rows.All())
        {
            cancel.ThrowIfCancellationRequested();
            findings.Add(row);
            unusable += row.Outcome == SurveyRow.Unusable ? 1 : 0;
            same += row.SameAs.Length > 0 ? 1 : 0;
        }

        WriteCsv("photos.csv", SurveyRow.Columns, rows.All().Select(row => (IEnumerable<string>)row.Values));
        WriteCsv("unusable.csv", ["file", "reason"], rows.All().Where(row => row.Outcome == SurveyRow.Unusable).Select(row => (IEnumerable<string>)[row.File, row.Warnings[0]]));
        WriteCsv(
            "objects.csv",
            ["object", "offered_as", "outcome", "photos"],
            findings.Objects().Select(item => (IEnumerable<string>)[item.ObjectKey, item.OfferedAs, item.Outcome, item.Photos.ToString(CultureInfo.InvariantCulture)]));
        Write("records.jsonl", writer =>
        {
            foreach (var record in rows.Records())
            {
                writer.Write(record);
                writer.Write('\n');
            }
        });
        await SurveyParquet.WriteAsync(Path.Combine(folder, "photos.parquet"), rows.All(), cancel).ConfigureAwait(false);
        var counts = findings.Counts();
        Write("counts.json", writer => writer.Write(Counts(counts).ToJsonString(new() { WriteIndented = true }) + "\n"));
        foreach (var (name, page) in new OverviewPages(options).Of(rows.All(), counts, files.Length, unusable))
        {
            Write(name, writer => writer.Write(page));
        }

        return (unusable, same, counts);
    }

    private static JsonArray Counts(ImmutableArray<FindingCount> counts) => new([.. counts.Select(count => new JsonObject
    {
        ["group"] = count.Group,
        ["outcome"] = count.Outcome,
        ["count"] = count.Count,
        ["of"] = count.Of,
        ["wilson_95_low"] = Math.Round(count.Interval.Low, 4),
        ["wilson_95_high"] = Math.Round(count.Interval.High, 4),
    })]);

    private void WriteCsv(string name, IEnumerable<string> header, IEnumerable<IEnumerable<string>> rows) => Write(name, writer =>
    {
        foreach (var row in rows.Prepend(header))
        {
            CsvTable.WriteRow(writer, row);
        }
    });

    private void Write(string name, Action<TextWriter> write) => WholeFile.Write(Path.Combine(folder, name), write);
}

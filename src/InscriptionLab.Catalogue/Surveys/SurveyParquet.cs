using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Threading;
using System.Threading.Tasks;
using InscriptionLab.Files;
using Parquet;
using Parquet.Schema;

namespace InscriptionLab.Surveys;

/// <summary>Writes a survey's table as Apache Parquet, all columns text, in groups of rows so that memory stays bounded.</summary>
internal static class SurveyParquet
{
    /// <summary>Rows in a group: a few megabytes.</summary>
    private const int GroupRows = 5000;

    /// <summary>Writes the file beside its place and moves it there.</summary>
    internal static async Task WriteAsync(string file, IEnumerable<SurveyRow> rows, CancellationToken cancel)
    {
        var fields = SurveyRow.Columns.Select(column => new DataField<string>(column, nullable: false)).ToArray();
        var unfinished = file + WholeFile.Unfinished;
        using (var stream = File.Create(unfinished))
        {
            await using var writer = await ParquetWriter.CreateAsync(new ParquetSchema(fields), stream, cancellationToken: cancel).ConfigureAwait(false);
            foreach (var group in rows.Chunk(GroupRows))
            {
                using var part = writer.CreateRowGroup();
                for (var column = 0; column < fields.Length; column++)
                {
                    await part.WriteAsync(fields[column], group.Select(row => row.Values[column]).ToArray()).ConfigureAwait(false);
                }
            }
        }

        File.Move(unfinished, file, overwrite: true);
    }
}

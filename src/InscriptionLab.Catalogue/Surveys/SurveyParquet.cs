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

    /// <summary>Writes the file, whole or not at all.</summary>
    internal static Task WriteAsync(string file, IEnumerable<SurveyRow> rows, CancellationToken cancel) => WholeFile.WriteAsync(file, stream => WriteAsync(stream, rows, cancel));

    private static async Task WriteAsync(Stream stream, IEnumerable<SurveyRow> rows, CancellationToken cancel)
    {
        var fields = SurveyRow.Columns.Select(column => new DataField<string>(column, nullable: false)).ToArray();
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
}

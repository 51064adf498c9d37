using System;
using System.Collections.Generic;
using System.Data.Common;
using System.Linq;
using System.Runtime.InteropServices;
using System.Threading;
using InscriptionLab.Likeness;
using InscriptionLab.Outcomes;
using Microsoft.EntityFrameworkCore;

namespace InscriptionLab.Cataloguing;

/// <summary>Hands out the embeddings of the marks that are not in the trash.</summary>
public sealed class LikenessSource
{
    /// <summary>Marks for which there is room at first.</summary>
    private const int FirstRoom = 1024;

    /// <summary>
    /// Every line with an embedding but those in the trash. Put so that a file answers from indexes alone: neither pictures nor records, which are forty times
    /// as large as the embeddings, are walked past, and only what lies in the trash
    /// is looked up (CROSS JOIN keeps the order of tables there).
    /// </summary>
    internal const string Question = """
        SELECT marks.line_id, marks.embedding FROM marks
        WHERE marks.embedding IS NOT NULL
          AND marks.line_id NOT IN (
            SELECT lines.id FROM examinations CROSS JOIN lines
            WHERE examinations.trashed_at IS NOT NULL AND lines.examination_id = examinations.id)
          AND marks.line_id NOT IN (
            SELECT lines.id FROM objects CROSS JOIN photos CROSS JOIN examinations CROSS JOIN lines
            WHERE objects.trashed_at IS NOT NULL AND photos.object_id = objects.id
              AND examinations.photo_id = photos.id AND lines.examination_id = examinations.id)
        ORDER BY marks.line_id
        """;

    /// <summary>The newest mark and step, and how many steps were taken back: if none of these changed, the embeddings did not.</summary>
    internal const string StateQuestion = "SELECT (SELECT coalesce(max(id), 0) FROM marks), (SELECT coalesce(max(id), 0) FROM changes), (SELECT count(*) FROM changes WHERE undone_at IS NOT NULL)";

    private readonly Func<CatalogueContext> _newContext;
    private readonly Lock _gate = new();
    private (long Marks, long Steps, long TakenBack) _loaded;
    private MarkIndex? _index;

    internal LikenessSource(Func<CatalogueContext> newContext) => _newContext = newContext;

    /// <summary>Gives the embeddings as an index; a mark's number there is the number of its line. It is loaded once and again only after something was added, trashed or restored.</summary>
    public MarkIndex Load()
    {
        using var context = _newContext();
        context.Database.OpenConnection();
        var connection = context.Database.GetDbConnection();
        lock (_gate)
        {
            var state = StateOf(connection);
            if (_index is null || _loaded != state)
            {
                (_index, _loaded) = (Read(connection), state);
            }

            return _index;
        }
    }

    /// <summary>Every step that adds a mark or takes one out of sight is noted, and every step taken back is marked.</summary>
    private static (long Marks, long Steps, long TakenBack) StateOf(DbConnection connection)
    {
        using var command = connection.CreateCommand();
        command.CommandText = StateQuestion;
        using var reader = command.ExecuteReader();
        reader.Read();
        return (reader.GetInt64(0), reader.GetInt64(1), reader.GetInt64(2));
    }

    /// <summary>Reads the embeddings in one pass, straight into their place, without the mapper.</summary>
    private static MarkIndex Read(DbConnection connection)
    {
        using var command = connection.CreateCommand();
        command.CommandText = Question;
        using var reader = command.ExecuteReader();
        var ids = new List<long>();
        var (values, used, dimensions) = (Array.Empty<sbyte>(), 0, 0);
        while (reader.Read())
        {
            dimensions = dimensions == 0 ? (int)reader.GetBytes(1, 0, null, 0, 0) : dimensions;
            if (values.Length - used < dimensions)
            {
                Array.Resize(ref values, Room(values.Length, used, dimensions));
            }

            var place = MemoryMarshal.AsBytes(values.AsSpan(used, dimensions));
            var embedding = (byte[])reader.GetValue(1);
            if (embedding.Length != dimensions)
            {
                throw new InscriptionLabException("The catalogue's pictures of lines were compared by different versions of InscriptionLab: examine the photos again to search by likeness.");
            }

            embedding.CopyTo(place);
            ids.Add(reader.GetInt64(0));
            used += dimensions;
        }

        Array.Resize(ref values, used);
        return new MarkIndex([.. ids], values);
    }

    /// <summary>Gives how many values there is to be room for: twice as many as before, as far as an array goes.</summary>
    /// <exception cref="InscriptionLabException">No array is large enough.</exception>
    internal static int Room(int before, int used, int more) => (long)used + more <= Array.MaxLength
        ? (int)Math.Min(Math.Max((long)more * FirstRoom, before * 2L), Array.MaxLength)
        : throw new InscriptionLabException("The catalogue has more pictures of lines than can be compared at once: divide it into several catalogues to search by likeness.");

    /// <summary>Gives the number of a line that has a picture; null where there is none.</summary>
    /// <param name="examination">Number of the examination.</param>
    /// <param name="position">Place of the line, from 0.</param>
    public long? LineOf(long examination, int position)
    {
        using var context = _newContext();
        return context.Marks.Where(mark => mark.Line!.ExaminationId == examination && mark.Line.Position == position).Select(mark => (long?)mark.LineId).SingleOrDefault();
    }

    /// <summary>Gives the picture of a line as a grey PNG file; null where there is none.</summary>
    /// <param name="examination">Number of the examination.</param>
    /// <param name="position">Place of the line, from 0.</param>
    public byte[]? PictureOf(long examination, int position)
    {
        using var context = _newContext();
        return context.Marks.AsNoTracking().Where(mark => mark.Line!.ExaminationId == examination && mark.Line.Position == position).Select(mark => mark.Picture).SingleOrDefault();
    }

    /// <summary>Gives the place of a line in its examination, from 0; null where there is no such line.</summary>
    /// <param name="line">Number of the line.</param>
    public int? PositionOf(long line)
    {
        using var context = _newContext();
        return context.Lines.AsNoTracking().Where(row => row.Id == line).Select(row => (int?)row.Position).SingleOrDefault();
    }

    /// <summary>Gives the embedding of one line; null where the line has none.</summary>
    /// <param name="line">Number of the line.</param>
    public IReadOnlyList<sbyte>? Of(long line)
    {
        using var context = _newContext();
        var embedding = context.Marks.AsNoTracking().Where(mark => mark.LineId == line).Select(mark => mark.Embedding).SingleOrDefault();
        return embedding is null ? null : Array.ConvertAll(embedding, value => unchecked((sbyte)value));
    }
}

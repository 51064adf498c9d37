using System;
using System.Collections.Generic;
using System.Linq;
using InscriptionLab.Likeness;
using Microsoft.EntityFrameworkCore;

namespace InscriptionLab.Cataloguing;

/// <summary>Hands out the embeddings of the marks that are not in the trash.</summary>
public sealed class LikenessSource
{
    private readonly Func<CatalogueContext> _newContext;

    internal LikenessSource(Func<CatalogueContext> newContext) => _newContext = newContext;

    /// <summary>Loads the embeddings into an index; a mark's number there is the number of its line.</summary>
    public MarkIndex Load()
    {
        using var context = _newContext();
        var rows = context.Marks.AsNoTracking()
            .Where(mark => mark.Embedding != null && mark.Line!.Examination!.TrashedAt == null && mark.Line.Examination.Photo!.Object!.TrashedAt == null)
            .Select(mark => new { mark.LineId, mark.Embedding })
            .AsEnumerable()
            .Select(row => KeyValuePair.Create<long, ReadOnlyMemory<sbyte>>(row.LineId, Array.ConvertAll(row.Embedding!, value => unchecked((sbyte)value))))
            .ToList();
        return new MarkIndex(rows);
    }

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

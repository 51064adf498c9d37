using System;
using System.Collections.Generic;
using System.Globalization;
using System.Security.Cryptography;
using InscriptionLab.Outcomes;

namespace InscriptionLab.References;

/// <summary>
/// Reads a reference list from the bytes of a CSV or JSON file. Both hold the same fields: form, maker and status must be there; style,
/// address, from, to, source, note, signature_position, signature_direction, layout, certainty, partners, successor_of, wording, letter_height_mm and letter_spacing may be.
/// A form is kept exactly as written, but for Unicode composition (NFC).
/// </summary>
public sealed class ReferenceListReader
{
    private const string JsonExtension = ".json";

    private readonly ReferenceListReaderOptions _options;

    /// <summary>Makes a reader.</summary>
    /// <param name="options">Bounds; null for the defaults.</param>
    public ReferenceListReader(ReferenceListReaderOptions? options = null) => _options = options ?? new ReferenceListReaderOptions();

    /// <summary>Reads a list.</summary>
    /// <param name="file">Name of the file, for messages; ".json" means JSON, as does a first character "{" or "[".</param>
    /// <param name="content">Bytes of the file: UTF-8, with or without a byte order mark.</param>
    /// <returns>The list and warnings; a list without rows is a list.</returns>
    /// <exception cref="InscriptionLabException">The file is no list. The message names file, row and column, and lists several errors together.</exception>
    public LoadedReferences Read(string file, ReadOnlySpan<byte> content)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(file);
        if (content.Length > _options.MaximumBytes)
        {
            throw new InscriptionLabException(string.Create(CultureInfo.InvariantCulture, $"{file}: has {content.Length} bytes, more than the {_options.MaximumBytes} that a reference list may have; split it."));
        }

        var text = Utf8Text.Of(file, content);
        var isJson = file.EndsWith(JsonExtension, StringComparison.OrdinalIgnoreCase) || text.AsSpan().TrimStart() is ['{' or '[', ..];
        var faults = new ReferenceFaults(file, isJson ? "field" : "column");
        var (name, rows) = isJson ? new JsonReferenceRows(faults).Cut(text) : (null, Rows(faults, text));
        var forms = new ReferenceFormParser(_options, faults).Parse(rows);
        faults.ThrowIfAny(_options.MaximumErrors);
        return new LoadedReferences(new ReferenceList(name ?? file, Convert.ToHexStringLower(SHA256.HashData(content)), forms), [.. faults.Warnings]);
    }

    private IReadOnlyList<ReferenceRow> Rows(ReferenceFaults faults, string text)
    {
        var rows = new CsvReferenceRows(faults, ReferenceField.Names).Cut(text);

        // Without its columns every row would be wrong in the same way: the header is reported alone.
        faults.ThrowIfHeaderIsWrong(_options.MaximumErrors);
        return rows;
    }
}

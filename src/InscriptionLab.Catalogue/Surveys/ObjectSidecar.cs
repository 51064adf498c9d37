using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using InscriptionLab.Outcomes;
using InscriptionLab.Tables;

namespace InscriptionLab.Surveys;

/// <summary>A CSV beside the photos that says which photos show which object: columns <c>file</c> and <c>object</c>, and if wished <c>offered_as</c>, the name under which the object is offered.</summary>
internal sealed class ObjectSidecar
{
    private readonly Dictionary<string, (string ObjectKey, string? OfferedAs)> _rows;

    private ObjectSidecar(Dictionary<string, (string ObjectKey, string? OfferedAs)> rows) => _rows = rows;

    /// <summary>Reads the file.</summary>
    /// <exception cref="InscriptionLabException">The file cannot be read or lacks a column.</exception>
    internal static ObjectSidecar Read(string file)
    {
        if (!File.Exists(file))
        {
            throw new InscriptionLabException($"{file}: there is no such file; name the CSV that says which photo shows which object.");
        }

        var table = CsvTable.Read(File.ReadAllText(file));
        var header = table.IsEmpty ? [] : table[0];
        var (files, objects, offers) = (header.IndexOf("file"), header.IndexOf("object"), header.IndexOf("offered_as"));
        if (files < 0 || objects < 0)
        {
            throw new InscriptionLabException($"{file}: the first row must name the columns file and object (and, if wished, offered_as).");
        }

        var rows = new Dictionary<string, (string, string?)>(StringComparer.Ordinal);
        foreach (var row in table.Skip(1).Where(row => row.Length > Math.Max(files, objects)))
        {
            var offered = offers >= 0 && offers < row.Length ? row[offers] : null;
            rows[Plain(row[files])] = (row[objects], string.IsNullOrWhiteSpace(offered) ? null : offered);
        }

        return new ObjectSidecar(rows);
    }

    /// <summary>Gives what the file says of a photo, by its path, its path inside the folder, or its bare name.</summary>
    internal (string ObjectKey, string? OfferedAs)? Find(string path, string inside)
    {
        foreach (var name in (ReadOnlySpan<string>)[Plain(path), Plain(inside), Path.GetFileName(path)])
        {
            if (_rows.TryGetValue(name, out var row) && row.ObjectKey.Length > 0)
            {
                return row;
            }
        }

        return null;
    }

    private static string Plain(string path) => path.Replace('\\', '/').Trim();
}

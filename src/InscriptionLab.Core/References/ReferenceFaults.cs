using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using InscriptionLab.Outcomes;

namespace InscriptionLab.References;

/// <summary>Collects what is wrong with a file, so that the user sees it all at once.</summary>
/// <param name="file">Name of the file, first word of each sentence.</param>
/// <param name="fieldWord">What the file calls a field: "column" or "field".</param>
internal sealed class ReferenceFaults(string file, string fieldWord)
{
    private readonly List<string> _errors = [];
    private readonly List<string> _warnings = [];

    private bool _isHeaderWrong;

    internal IReadOnlyList<string> Warnings => _warnings;

    internal void HeaderError(string place, string what)
    {
        _isHeaderWrong = true;
        Error(place, what);
    }

    internal void Error(string place, string field, string what) => _errors.Add($"{file}, {place}, {fieldWord} {field}: {what}");

    internal void Error(string place, string what) => _errors.Add($"{file}, {place}: {what}");

    internal void Warn(string place, string what) => _warnings.Add($"{file}, {place}: {what}");

    internal void Warn(string what) => _warnings.Add($"{file}: {what}");

    /// <summary>Throws where there are errors: one alone as it is, several as a list of the first ones.</summary>
    /// <exception cref="InscriptionLabException">There is at least one error.</exception>
    internal void ThrowIfAny(int maximum)
    {
        if (_errors.Count == 0)
        {
            return;
        }

        if (_errors.Count == 1)
        {
            throw new InscriptionLabException(_errors[0]);
        }

        var shown = _errors.Count > maximum ? string.Create(CultureInfo.InvariantCulture, $"; the first {maximum} are") : string.Empty;
        var heading = string.Create(CultureInfo.InvariantCulture, $"{file} has {_errors.Count} errors{shown}:");
        throw new InscriptionLabException(string.Join('\n', _errors.Take(maximum).Select(error => "  " + error).Prepend(heading)));
    }

    /// <summary>Throws where the header is wrong.</summary>
    /// <exception cref="InscriptionLabException">The header is wrong.</exception>
    internal void ThrowIfHeaderIsWrong(int maximum)
    {
        if (_isHeaderWrong)
        {
            ThrowIfAny(maximum);
        }
    }

    /// <summary>Makes the exception for a file that cannot be read at all.</summary>
    internal InscriptionLabException Unreadable(string what) => new($"{file}: {what}");
}

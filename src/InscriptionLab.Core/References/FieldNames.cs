using System;
using System.Collections.Immutable;
using System.Linq;

namespace InscriptionLab.References;

/// <summary>The columns that a table may have.</summary>
/// <param name="All">All of them.</param>
/// <param name="Required">Those without which the table cannot be used.</param>
internal sealed record FieldNames(ImmutableArray<string> All, ImmutableArray<string> Required)
{
    /// <summary>Gives the field meant by a heading: case does not count, and a space or hyphen counts as an underscore.</summary>
    internal string Meant(string heading)
    {
        var plain = heading.Trim().Replace(' ', '_').Replace('-', '_');
        return All.FirstOrDefault(name => name.Equals(plain, StringComparison.OrdinalIgnoreCase)) ?? plain;
    }
}

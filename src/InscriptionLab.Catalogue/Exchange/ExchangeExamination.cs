using System;
using System.Collections.Immutable;
using InscriptionLab.Cataloguing;

namespace InscriptionLab.Exchange;

/// <summary>One examination as it is handed on.</summary>
/// <param name="Uid">Its name, the same in every catalogue.</param>
/// <param name="MadeAt">When it was made.</param>
/// <param name="Versions">What made it.</param>
/// <param name="Content">What its record says.</param>
/// <param name="Lines">Its lines, in order.</param>
/// <param name="Record">The record exactly as it was kept.</param>
public sealed record ExchangeExamination(
    string Uid,
    DateTimeOffset MadeAt,
    EntryVersions Versions,
    RecordContent Content,
    ImmutableArray<ExchangeLine> Lines,
    string Record)
{
    /// <summary>Gets its number in this catalogue.</summary>
    public long Number { get; init; }
}

using System;
using System.Collections.Generic;

namespace InscriptionLab.Cataloguing.Rows;

/// <summary>One object: a telescope, a tube, a cell, however many photos show it.</summary>
internal sealed class ObjectRow
{
    public long Id { get; set; }

    /// <summary>Gets or sets the name by which the object is called in the catalogue, unique.</summary>
    public required string Key { get; set; }

    public string? Title { get; set; }

    public string? Note { get; set; }

    /// <summary>Gets or sets the name under which a seller or a list offers it.</summary>
    public string? OfferedAs { get; set; }

    public DateTimeOffset CreatedAt { get; set; }

    public DateTimeOffset? TrashedAt { get; set; }

    public ICollection<PhotoRow> Photos { get; } = [];

    public ICollection<ObservationRow> Observations { get; } = [];
}

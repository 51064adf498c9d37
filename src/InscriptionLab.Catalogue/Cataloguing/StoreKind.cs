namespace InscriptionLab.Cataloguing;

/// <summary>The databases that hold a catalogue.</summary>
public enum StoreKind
{
    /// <summary>One file on this machine.</summary>
    Sqlite,

    /// <summary>A PostgreSQL server.</summary>
    PostgreSql,
}

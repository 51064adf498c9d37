namespace InscriptionLab.Cataloguing;

/// <summary>What kind of work an entry records.</summary>
public static class EntryKind
{
    /// <summary>One photo examined.</summary>
    public const string Examination = "examination";

    /// <summary>Several photos read together; the entry hangs on the first of them.</summary>
    public const string SetExamination = "set";

    /// <summary>A lens cell measured.</summary>
    public const string Measurement = "measurement";
}

namespace InscriptionLab.Optics;

/// <summary>How the words "day or night" stand beside a glass's pupils.</summary>
public enum DayNightStanding
{
    /// <summary>Exit pupil of a night glass.</summary>
    Served,

    /// <summary>Between a day and a night glass.</summary>
    ServedAtDusk,

    /// <summary>Exit pupil of a day glass.</summary>
    DayOnly,
}

namespace InscriptionLab.Exchange;

/// <summary>Steps of making a data set, in their order.</summary>
public enum DatasetStep
{
    /// <summary>Objects are read from the catalogue.</summary>
    Collecting,

    /// <summary>Marks are compared with each other.</summary>
    Grouping,

    /// <summary>Pictures and tables are written.</summary>
    Writing,

    /// <summary>Check sums are made.</summary>
    Packing,
}

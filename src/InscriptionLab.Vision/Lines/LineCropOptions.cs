namespace InscriptionLab.Vision.Lines;

/// <summary>How a line is cut out for the reader; the numbers are those that the reader was trained with.</summary>
public sealed record LineCropOptions
{
    /// <summary>Gets the rows of a crop.</summary>
    /// <value>Default 64, the reader's input height.</value>
    public int Height { get; init; } = 64;

    /// <summary>Gets the share of the rows that the ink fills from top to bottom.</summary>
    /// <value>Default 0.76, as the reader's training lines were cut.</value>
    public double InkShare { get; init; } = 0.76;

    /// <summary>Gets the free ground before and behind the ink, as a share of the rows.</summary>
    /// <value>Default 0.5, as the reader's training lines were cut.</value>
    public double Margin { get; init; } = 0.5;

    /// <summary>Gets the step in which crops grow wider, so that lines of like width are read together.</summary>
    /// <value>Default 32 columns; the room is filled with the photo's own ground.</value>
    public int WidthStep { get; init; } = 32;

    /// <summary>Gets the widest crop.</summary>
    /// <value>Default 2048 columns: about 32 times as long as high, longer than lines of lettering on a tube are. A longer line is cut at its end.</value>
    public int MaximumWidth { get; init; } = 2048;
}

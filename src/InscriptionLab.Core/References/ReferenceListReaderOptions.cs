using InscriptionLab.Measures;

namespace InscriptionLab.References;

/// <summary>Bounds within which a reference list is read.</summary>
public sealed record ReferenceListReaderOptions
{
    /// <summary>Gets the largest file, in bytes.</summary>
    /// <value>Default 64 MiB: some 100,000 rows of 600 bytes.</value>
    public int MaximumBytes { get; init; } = 64 * 1024 * 1024;

    /// <summary>Gets how many errors are listed together.</summary>
    /// <value>Default 20: about a screenful.</value>
    public int MaximumErrors { get; init; } = 20;

    /// <summary>Gets the longest form, in letters.</summary>
    /// <value>Default 200: no line of lettering on a tube is longer; a longer one is a slip of the delimiter or of a quotation mark.</value>
    public int MaximumFormLetters { get; init; } = 200;

    /// <summary>Gets the first year that can be meant.</summary>
    /// <value>Default 1500: before any telescope, so that only slips are refused.</value>
    public int MinimumYear { get; init; } = 1500;

    /// <summary>Gets the last year that can be meant.</summary>
    /// <value>Default 2100: beyond any row, so that only slips are refused.</value>
    public int MaximumYear { get; init; } = 2100;

    /// <summary>Gets the least height of a letter.</summary>
    /// <value>Default 0.3 mm: smaller letters are not engraved by hand, so that only slips are refused.</value>
    public Length SmallestLetter { get; init; } = Length.FromMillimetres(0.3);

    /// <summary>Gets the greatest height of a letter.</summary>
    /// <value>Default 40 mm: taller than lettering on a hand telescope can be, so that only slips are refused.</value>
    public Length LargestLetter { get; init; } = Length.FromMillimetres(40);

    /// <summary>Gets the least distance from letter to letter, over the height of a capital.</summary>
    /// <value>Default 0.1: closer letters would lie over each other, so that only slips are refused.</value>
    public double ClosestLetters { get; init; } = 0.1;

    /// <summary>Gets the greatest distance from letter to letter, over the height of a capital.</summary>
    /// <value>Default 8: wider letters would not be read as a word, so that only slips are refused.</value>
    public double WidestLetters { get; init; } = 8;
}

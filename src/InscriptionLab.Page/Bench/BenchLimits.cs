namespace InscriptionLab.Page.Bench;

/// <summary>How much lies on the bench at most.</summary>
internal sealed record BenchLimits
{
    /// <summary>Gets the most photos of one piece.</summary>
    /// <value>48: a tube turned by 10 degrees a photo, and some to spare.</value>
    internal int PhotosOfPiece { get; init; } = 48;

    /// <summary>Gets the most pieces.</summary>
    /// <value>200: a day's work; they are kept in memory until they are closed.</value>
    internal int Pieces { get; init; } = 200;

    /// <summary>Gets the most pixels of all photos together.</summary>
    /// <value>600 million: 50 photos of 12 megapixels, about 3.2 GB in memory (5.3 bytes a pixel: colour, grey, and the smaller copies for the viewer).</value>
    internal long Pixels { get; init; } = 600_000_000;

    /// <summary>Gets the most photos that are worked on at once, where there are so many cores.</summary>
    /// <value>4: each holds half a gigabyte while it is read.</value>
    internal int PhotosAtOnce { get; init; } = 4;

    /// <summary>Gets the longest name of a photo or piece, in characters.</summary>
    /// <value>120.</value>
    internal int NameLength { get; init; } = 120;
}

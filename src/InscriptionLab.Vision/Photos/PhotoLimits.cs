namespace InscriptionLab.Vision.Photos;

/// <summary>How much of a stranger's file the reader takes on.</summary>
public sealed record PhotoLimits
{
    /// <summary>Gets the largest file in bytes.</summary>
    /// <value>256 MB: a 100-megapixel phone JPEG is below 60 MB, a 16-bit TIFF of 40 megapixels below 250 MB.</value>
    public long FileBytes { get; init; } = 256L * 1024 * 1024;

    /// <summary>Gets the largest number of pixels.</summary>
    /// <value>120 million: above the 108 megapixels of large phone cameras; 360 MB of colour pixels.</value>
    public long Pixels { get; init; } = 120_000_000;

    /// <summary>Gets the longest side in pixels.</summary>
    /// <value>32766: the picture library resamples nothing longer.</value>
    public int LongestSide { get; init; } = 32766;

    /// <summary>Gets the smallest side in pixels.</summary>
    /// <value>16: a line cut out of a photo may be little higher than its letters, and none can be read with fewer rows.</value>
    public int SmallestSide { get; init; } = 16;
}

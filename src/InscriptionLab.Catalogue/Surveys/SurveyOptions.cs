using System;
using System.Collections.Immutable;

namespace InscriptionLab.Surveys;

/// <summary>How a survey goes about its work.</summary>
public sealed record SurveyOptions
{
    /// <summary>Gets the endings of files that are taken for photos.</summary>
    /// <value>The formats that the program reads.</value>
    public ImmutableArray<string> Endings { get; init; } = [".jpg", ".jpeg", ".png", ".webp", ".tif", ".tiff", ".bmp", ".heic", ".heif", ".avif"];

    /// <summary>Gets how many bits of the perceptual hash may differ between two photos that count as nearly the same.</summary>
    /// <value>Default 6 of 64; at most 7, because the search looks up groups of 8 bits of which one must agree.</value>
    public int NearDuplicateBits { get; init; } = 6;

    /// <summary>Gets how often a photo may be begun without an end, or with a fault that may pass, before it is left out.</summary>
    /// <value>Default 25: in 20 kills a few seconds apart, eight of 26 sound photos were begun five times in vain (seen with the samples), so a low
    /// number would lose photos; a photo that itself kills the program does so each time and is left out after 25 starts.</value>
    public int MostBegins { get; init; } = 25;

    /// <summary>Gets how often finished work is forced onto the disk.</summary>
    /// <value>Default 2 s: a power cut costs two seconds; a killed program costs nothing.</value>
    public TimeSpan ForceEvery { get; init; } = TimeSpan.FromSeconds(2);

    /// <summary>Gets how many photos one page of the overview shows.</summary>
    /// <value>Default 200: a page of about 2 MB with its small pictures.</value>
    public int PhotosPerPage { get; init; } = 200;

    /// <summary>Gets the longer side of the overview's small pictures, in pixels.</summary>
    /// <value>Default 240.</value>
    public int ThumbnailSide { get; init; } = 240;
}

namespace InscriptionLab.Assess;

/// <summary>What an assessment looks at.</summary>
internal enum AssessLook
{
    /// <summary>Reading, tubes, boxes and cells: the figures of the README.</summary>
    Whole,

    /// <summary>Faults planted in photos against the advice given.</summary>
    Advice,

    /// <summary>The tubes, without reading.</summary>
    Tubes,

    /// <summary>Styles, stated probabilities and the second reader.</summary>
    Reader,

    /// <summary>Which misspelt names are named with their letters.</summary>
    Findings,

    /// <summary>Photos of a turned tube joined to one strip.</summary>
    Turns,

    /// <summary>Photos turned upside down and mirrored.</summary>
    Views,

    /// <summary>The side from which the light comes.</summary>
    Lamps,

    /// <summary>Whether likeness finds the same mark in another photo.</summary>
    Likeness,

    /// <summary>What blur does to letters and to their probabilities.</summary>
    Sharpness,
}

using System.Collections.Immutable;
using InscriptionLab.Assess.Scores;

namespace InscriptionLab.Assess;

/// <summary>All figures of one folder of photos.</summary>
/// <param name="Reading">Reading figures, one a group; the first group holds all photos of tubes and raking sets.</param>
/// <param name="Blanks">Photos without lettering.</param>
/// <param name="BlanksWithText">Of those, photos in which two or more letters or digits were read.</param>
/// <param name="FalseLetters">Letters and digits read in photos without lettering.</param>
/// <param name="TubesTrue">Photos with a tube.</param>
/// <param name="TubesFound">Of those, photos in which a tube was found.</param>
/// <param name="TubesImagined">Photos without a tube in which one was found.</param>
/// <param name="Diameter">Relative errors of tube diameters, shares of 1.</param>
/// <param name="Axis">Errors of axis directions in degrees.</param>
/// <param name="Boxes">Overlaps of letter boxes, 0 to 1.</param>
/// <param name="Calibration">Letter probabilities against letters right.</param>
/// <param name="Kept">What is left, and how much of it is wrong, where letters under a probability count as unclear.</param>
/// <param name="Cells">Relative errors of diameters, one group a line.</param>
/// <param name="Covered">Diameters whose truth lies within the stated expanded uncertainty.</param>
/// <param name="Measured">Diameters measured.</param>
/// <param name="NotMeasured">Diameters that are there and were not measured.</param>
/// <param name="Seconds">Seconds a photo.</param>
/// <param name="Failures">One sentence for each photo that could not be used.</param>
internal sealed record Assessment(
    ImmutableArray<TextFigures> Reading,
    int Blanks,
    int BlanksWithText,
    int FalseLetters,
    int TubesTrue,
    int TubesFound,
    int TubesImagined,
    Spread? Diameter,
    Spread? Axis,
    ImmutableArray<double> Boxes,
    Calibration? Calibration,
    ImmutableArray<KeptLetters> Kept,
    ImmutableArray<CellFigures> Cells,
    int Covered,
    int Measured,
    int NotMeasured,
    Spread? Seconds,
    ImmutableArray<string> Failures);

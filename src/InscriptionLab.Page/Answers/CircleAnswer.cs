using System.Collections.Immutable;

namespace InscriptionLab.Page.Answers;

/// <summary>One circle.</summary>
/// <param name="Role">outer, clear or stop.</param>
/// <param name="Ellipse">Centre x and y, half axes, turn in degrees: its image in the photo.</param>
/// <param name="Millimetres">Diameter.</param>
/// <param name="ExpandedMillimetres">Expanded uncertainty.</param>
/// <param name="CoverageFactor">Its factor.</param>
/// <param name="Statement">The result in words.</param>
/// <param name="Budget">Source, standard uncertainty with unit, share in millimetres, basis.</param>
internal sealed record CircleAnswer(
    string Role,
    ImmutableArray<double> Ellipse,
    double Millimetres,
    double ExpandedMillimetres,
    double CoverageFactor,
    string Statement,
    ImmutableArray<ImmutableArray<string>> Budget);

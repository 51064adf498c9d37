using InscriptionLab.Cells;
using InscriptionLab.Measures;
using Xunit;

namespace InscriptionLab.Vision.Tests.Cells;

/// <summary>A cell drawn at random with what its user says.</summary>
/// <param name="Cell">The cell.</param>
/// <param name="Scale">The scale as the user names it.</param>
/// <param name="Plane">What the user knows of the height.</param>
/// <param name="SaidHeight">Height of the rim above the scale as the user gives it, in millimetres; null where nothing is said.</param>
internal sealed record DrawnCell(RenderedCell Cell, string Scale, DrawnPlane Plane, double? SaidHeight)
{
    internal MeasureRequest Request
    {
        get
        {
            Assert.True(ScaleRequest.TryParse(Scale, out var scale, out var problem), problem);
            return new MeasureRequest(scale, SaidHeight is { } height ? Length.FromMillimetres(height) : null);
        }
    }
}

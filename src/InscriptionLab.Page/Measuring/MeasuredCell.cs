using System.Collections.Immutable;
using InscriptionLab.Cells;

namespace InscriptionLab.Page.Measuring;

/// <summary>What measuring a photo gave; the photo itself is not kept a second time.</summary>
/// <param name="Cell">The measured cell; null where nothing could be measured, and then the warnings say why.</param>
/// <param name="Warnings">Sentences for the user.</param>
internal sealed record MeasuredCell(CellMeasurement? Cell, ImmutableArray<string> Warnings);

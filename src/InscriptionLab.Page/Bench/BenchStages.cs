using System;
using System.Threading;
using InscriptionLab.App.Examining;
using InscriptionLab.Measures;
using InscriptionLab.Photos;
using InscriptionLab.Readings;
using InscriptionLab.Strips;

namespace InscriptionLab.Page.Bench;

/// <summary>The stages as the page uses them.</summary>
/// <param name="Examining">The stages of an examination.</param>
/// <param name="ReadAt">Reads one line in a box that a person drew in the strip; null where nothing can be read there.</param>
/// <param name="ListKey">Name that changes whenever the reference list does.</param>
internal sealed record BenchStages(ExaminingStages Examining, Func<Photo, Strip, Quad, CancellationToken, LineReading?> ReadAt, string ListKey);

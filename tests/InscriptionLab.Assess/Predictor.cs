using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Diagnostics;
using System.IO;
using System.Linq;
using System.Threading;
using InscriptionLab.App;
using InscriptionLab.App.Demo;
using InscriptionLab.App.Examining;
using InscriptionLab.App.Records;
using InscriptionLab.Assess.Truths;
using InscriptionLab.Cells;
using InscriptionLab.Gathering;
using InscriptionLab.Measures;
using InscriptionLab.Outcomes;

namespace InscriptionLab.Assess;

/// <summary>Runs the program on every photo of a folder, as <c>examine</c> and <c>measure</c> would, and looks at no truth but the kind of photo.</summary>
internal sealed class Predictor(Composition composition, string folder, TextWriter progress)
{
    private readonly ImmutableArray<PhotoRecord>.Builder _photos = ImmutableArray.CreateBuilder<PhotoRecord>();
    private readonly ImmutableArray<SetRecord>.Builder _sets = ImmutableArray.CreateBuilder<SetRecord>();
    private readonly ImmutableArray<MeasureRecord>.Builder _cells = ImmutableArray.CreateBuilder<MeasureRecord>();
    private readonly ImmutableArray<string>.Builder _failures = ImmutableArray.CreateBuilder<string>();
    private readonly ImmutableArray<double>.Builder _seconds = ImmutableArray.CreateBuilder<double>();

    internal Predictions Predict(IEnumerable<TruthPhoto> truths, CancellationToken cancel)
    {
        foreach (var group in truths.GroupBy(truth => truth.Set ?? truth.File, StringComparer.Ordinal))
        {
            Predict([.. group], cancel);
        }

        return new Predictions(_photos.ToImmutable(), _sets.ToImmutable(), _cells.ToImmutable(), _failures.ToImmutable(), _seconds.ToImmutable());
    }

    private void Predict(List<TruthPhoto> group, CancellationToken cancel)
    {
        var members = new List<Examination>();
        foreach (var truth in group)
        {
            progress.WriteLine(truth.File);
            var file = Path.Combine(folder, truth.File);
            var start = Stopwatch.GetTimestamp();
            try
            {
                if (truth.Kind == "cell")
                {
                    _cells.Add(MeasureRecordMaker.Of(composition.Measurer().Measure(file, RequestOf(truth), cancel)));
                }
                else
                {
                    members.Add(composition.Examiner(DemoReferences.Load()).Examine(file, cancel));
                    _photos.Add(RecordMaker.Of(members[^1]));
                }

                _seconds.Add(Stopwatch.GetElapsedTime(start).TotalSeconds);
            }
            catch (InscriptionLabException problem)
            {
                _failures.Add(problem.Message);
            }
        }

        if (group.Count > 1)
        {
            var kind = group[0].Kind == "raking" ? SetKind.Raking : SetKind.Turns;
            _sets.AddRange(composition.SetExaminer(DemoReferences.Load()).Examine([.. members], kind, cancel).Select(RecordMaker.Of));
        }
    }

    /// <summary>Step to which a person reads a height off a rule, in millimetres.</summary>
    private const double HeightStep = 0.5;

    /// <summary>What a user knows who laid the scale there: its kind and size, and how far below the rim it lies, read to half a millimetre.</summary>
    private static MeasureRequest RequestOf(TruthPhoto truth)
    {
        if (truth.Scale is not { } scale)
        {
            return MeasureRequest.Nothing;
        }

        var request = scale.Type switch
        {
            "checkerboard" => new ScaleRequest(ScaleKind.Checkerboard, Length.FromMillimetres(scale.Square)),
            "ruler" => new ScaleRequest(ScaleKind.Rule, Length.FromMillimetres(scale.TickPitch)),
            _ => new ScaleRequest(ScaleKind.Aruco, Length.FromMillimetres(scale.Marker)),
        };
        return new MeasureRequest(request, Length.FromMillimetres(Math.Round(scale.BelowRim / HeightStep) * HeightStep));
    }
}

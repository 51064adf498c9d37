using System.Collections.Immutable;
using System.Linq;
using System.Threading;
using InscriptionLab.Advice;
using InscriptionLab.App.Examining;
using InscriptionLab.Assess.Planting;
using InscriptionLab.Outcomes;
using InscriptionLab.Tubes;
using Xunit;

namespace InscriptionLab.App.Tests.Advising;

/// <summary>Photos spoilt in one way each: the advice must name that fault first. Tube and letters come from the truth; <c>assess --advice</c> does the same with the whole program.</summary>
public sealed class PlantedFaultTests(ITestOutputHelper output)
{
    private static readonly ImmutableArray<string> Bases = [SampleImages.RomanTransposed, SampleImages.RomanThreeLines];

    /// <summary>All but one case in ten must be named.</summary>
    private const double LeastRight = 0.9;

    [Fact]
    public void The_planted_fault_is_named_first()
    {
        var table = new AdviceTable();
        foreach (var sample in Bases)
        {
            var stages = TruthExaminations.Stages(sample);
            var photo = stages.Open(SampleImages.PathOf(sample));
            var tube = ((Outcome<ImmutableArray<Tube>>.Found)stages.FindTubes(photo, CancellationToken.None)).Value[0];
            var reading = stages.Read(photo, stages.Unroll(photo, tube, CancellationToken.None), CancellationToken.None);
            var height = stages.Advise(photo, tube, reading, CancellationToken.None).Measures.LetterHeight!.Value.Pixels;

            // A photo from farther away needs its own reading.
            foreach (var one in PlantedCases.Of(height, LetteredPart.MiddleOf(reading)!.Value).Where(one => one.Fault != LimitKind.Pixels))
            {
                var advice = stages.Advise(one.Spoil(photo), tube, reading, CancellationToken.None);
                table.Add(one.Fault, advice);
                output.WriteLine($"{sample}, {one.Name}: {advice.Measures}");
            }
        }

        output.WriteLine(table.ToMarkdown());
        Assert.True(table.Right >= LeastRight, table.ToMarkdown());
    }
}

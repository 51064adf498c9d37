using System.Linq;
using System.Text.Json;
using System.Threading;
using InscriptionLab.App.Demo;
using InscriptionLab.App.Records;
using InscriptionLab.References;
using Xunit;

namespace InscriptionLab.App.Tests;

/// <summary>The whole program on one photo, with the demonstration list, with one name that differs from the lettering by two letters, and with an empty list.</summary>
public sealed class SameReadingWithAnyListTests
{
    [Fact]
    public void The_reading_is_bit_for_bit_the_same_with_the_list_loaded_or_empty()
    {
        using var composition = new Composition();
        var loaded = DemoReferences.Load();
        ReferenceList[] lists = [loaded, loaded with { Forms = [] }, loaded with { Forms = [.. loaded.Forms.Where(form => form.Form == "Kesselbrandt")] }];

        var read = lists.Select(list => composition.Examiner(list).Examine(SampleImages.PathOf(SampleImages.RomanTransposed), CancellationToken.None)).ToArray();

        Assert.NotEmpty(read[0].Reading.Lines);
        Assert.NotEqual(read[0].Finding.Outcome, read[1].Finding.Outcome);
        Assert.All(read, examination =>
        {
            Assert.Equal(JsonSerializer.Serialize(RecordMaker.Of(read[0]).Lines), JsonSerializer.Serialize(RecordMaker.Of(examination).Lines));
            Assert.All(read[0].Reading.Lines.Zip(examination.Reading.Lines), pair =>
            {
                Assert.Equal(pair.First.Letters.Select(letter => letter.Probability.Value), pair.Second.Letters.Select(letter => letter.Probability.Value));
                Assert.Equal(pair.First.Posteriors?.Frames, pair.Second.Posteriors?.Frames);
                for (var frame = 0; frame < (pair.First.Posteriors?.Frames ?? 0); frame++)
                {
                    Assert.True(System.MemoryExtensions.SequenceEqual(pair.First.Posteriors!.Frame(frame), pair.Second.Posteriors!.Frame(frame)));
                }
            });
        });
    }
}

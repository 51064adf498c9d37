using System;
using System.Linq;
using InscriptionLab.Cataloguing;
using InscriptionLab.Outcomes;
using Xunit;

namespace InscriptionLab.Catalogue.Tests.Cataloguing;

/// <summary>What persons saw on objects themselves, and pictures of photos read together.</summary>
public abstract partial class CatalogueRules
{
    private static readonly DateTimeOffset Noon = new(2026, 5, 1, 12, 0, 0, TimeSpan.Zero);

    [Fact]
    public void To_each_question_the_latest_answer_stands_and_every_step_can_be_undone()
    {
        var catalogue = Open();
        catalogue.Intake.Add(Entries.Of("a.jpg", "Brockwell", key: "tube-1"), By);

        Assert.True(catalogue.Desk.Observe("tube-1", [Seen("screws", "slotted", null, 1850), Seen("draws", "3", null, null)], [], By));
        Assert.False(catalogue.Desk.Observe("tube-1", [Seen("screws", "slotted", null, 1850)], [], "somebody else"));
        Assert.True(catalogue.Desk.Observe("tube-1", [Seen("screws", "crossed", 1936, null) with { By = "B. Cataloguer" }], [], By));
        Assert.True(catalogue.Desk.Observe("tube-1", [], ["draws"], By));
        var now = Assert.Single(Standing(catalogue));
        Assert.Equal(("screws", "crossed", 1936, "B. Cataloguer", Noon), (now.Feature, now.Answer, now.FromYear, now.By, now.MadeAt));
        using (var context = catalogue.NewContext())
        {
            Assert.Equal(3, context.Observations.Count());
        }

        catalogue.Desk.Undo();
        Assert.Equal(["draws", "screws"], Standing(catalogue).Select(seen => seen.Feature).Order(StringComparer.Ordinal));
        catalogue.Desk.Undo();
        Assert.Equal("slotted", Standing(catalogue).Single(seen => seen.Feature == "screws").Answer);
        catalogue.Desk.Undo();
        Assert.Empty(Standing(catalogue));
        Assert.Empty(catalogue.Health.Check());
        Assert.Throws<InscriptionLabException>(() => catalogue.Desk.Observe("tube-9", [], [], By));
    }

    [Fact]
    public void Objects_are_found_by_what_was_seen_on_them_and_by_its_years()
    {
        var catalogue = Open();
        foreach (var name in new[] { "early", "late", "both", "never" })
        {
            catalogue.Intake.Add(Entries.Of($"{name}.jpg", "Brockwell", key: name), By);
        }

        catalogue.Desk.Observe("early", [Seen("tube", "pasteboard", null, 1790)], [], By);
        catalogue.Desk.Observe("late", [Seen("tube", "brass", 1800, null), Seen("draws", "3", null, null)], [], By);
        catalogue.Desk.Observe("both", [Seen("tube", "brass", 1780, 1860), Seen("screws", "slotted", null, 1820)], [], By);
        catalogue.Desk.Observe("never", [Seen("draws", "3", null, null)], [], By);

        Assert.Equal(["both", "late"], Keys(new SearchQuery { Feature = "tube", Answer = "brass" }));
        Assert.Equal(["both", "early", "late"], Keys(new SearchQuery { Feature = "tube" }));
        Assert.Equal(["both", "early"], Keys(new SearchQuery { FromYear = 1785, ToYear = 1788 }));
        Assert.Equal(["late"], Keys(new SearchQuery { FromYear = 1830 }));
        Assert.Equal(["early"], Keys(new SearchQuery { ToYear = 1779 }));
        Assert.Equal(["late"], Keys(new SearchQuery { Feature = "draws", FromYear = 1700 }));
        Assert.Empty(Keys(new SearchQuery { Feature = "tube", Answer = "tin" }));
        Assert.Throws<InscriptionLabException>(() => catalogue.Search.Find(new SearchQuery { FromYear = 1900, ToYear = 1800 }));

        string[] Keys(SearchQuery query) => [.. catalogue.Search.Find(query).Select(hit => hit.ObjectKey).Order(StringComparer.Ordinal)];
    }

    [Fact]
    public void Pictures_of_a_joint_reading_are_kept_and_a_damaged_one_is_noticed()
    {
        var catalogue = Open();
        catalogue.Intake.Add(Joint("together.jpg"), By);
        var number = catalogue.Search.Find(new SearchQuery())[0].Examination;

        Assert.Equal([("strip", 30, 10), ("relight", 30, 10)], catalogue.Search.PicturesOf(number));
        Assert.Equal(Joint("together.jpg").Pictures[1].File, catalogue.Search.PictureOf(number, "relight")!.File);
        Assert.Null(catalogue.Search.PictureOf(number, "secret"));
        Assert.Empty(catalogue.Health.Check());
        using (var context = catalogue.NewContext())
        {
            context.Pictures.First().Picture = [1, 2, 3];
            context.SaveChanges();
        }

        Assert.Contains("\"strip\" is damaged", Assert.Single(catalogue.Health.Check()), StringComparison.Ordinal);
    }

    [Fact]
    public void Letters_that_persons_read_make_other_work_of_the_same_photo()
    {
        var catalogue = Open();
        var entry = Entries.Of("a.jpg", "Brockwell");

        Assert.True(catalogue.Intake.Add(entry, By));
        Assert.True(catalogue.Intake.Add(entry with { Hands = "0 Brackwell" }, By));
        Assert.False(catalogue.Intake.Add(entry with { Hands = "0 Brackwell" }, By));
        Assert.Equal([1L, 2L], new[] { catalogue.Intake.NumberOf(entry)!.Value, catalogue.Intake.NumberOf(entry with { Hands = "0 Brackwell" })!.Value }.Order());
        Assert.Null(catalogue.Intake.NumberOf(entry with { Hands = "0 Bruckwell" }));
    }

    private static ObservationEntry Seen(string feature, string answer, int? from, int? to) => new(feature, answer, from, to, from is null && to is null ? string.Empty : "common practice", "A. Cataloguer", Noon);

    private static ObservationEntry[] Standing(InscriptionLab.Cataloguing.Catalogue catalogue) => [.. catalogue.Search.ObjectOf(catalogue.Search.Find(new SearchQuery())[0].Examination)!.Value.Seen];

    private static CatalogueEntry Joint(string file) => Entries.Of(file, "Brockwell") with
    {
        Kind = EntryKind.SetExamination,
        Pictures =
        [
            new PictureEntry("strip", "image/jpeg", 30, 10, [0xFF, 0xD8, 1, 2, 0xFF, 0xD9]),
            new PictureEntry("relight", "image/png", 30, 10, [.. InscriptionLab.Likeness.GrayPng.Write(Entries.Picture("relight"))]),
        ],
    };
}

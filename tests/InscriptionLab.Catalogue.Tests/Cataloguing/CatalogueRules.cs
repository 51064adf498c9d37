using System;
using System.Globalization;
using System.IO;
using System.Linq;
using InscriptionLab.Cataloguing;
using InscriptionLab.Outcomes;
using Xunit;
using Cat = InscriptionLab.Cataloguing.Catalogue;

namespace InscriptionLab.Catalogue.Tests.Cataloguing;

/// <summary>What holds for a catalogue whichever database carries it.</summary>
public abstract partial class CatalogueRules
{
    private const string By = "the tester";

    /// <summary>Gives the address of a new, empty catalogue; another one each time.</summary>
    internal abstract string NewAddress();

    private Cat Open(string? address = null) => Cat.Open(address ?? NewAddress(), TimeProvider.System);

    [Fact]
    public void The_same_work_on_the_same_photo_is_kept_once()
    {
        var catalogue = Open();
        var entry = Entries.Of("a.jpg", "Brockwell");

        Assert.True(catalogue.Intake.Add(entry, By));
        Assert.False(catalogue.Intake.Add(entry, By));
        Assert.True(catalogue.Intake.Add(entry with { Versions = Entries.Versions with { Model = "reader-2" } }, By));

        Assert.Equal(2, catalogue.Search.Find(new SearchQuery()).Length);
        Assert.Empty(catalogue.Health.Check());
    }

    [Fact]
    public void Text_is_found_whatever_its_capitals_marks_and_long_s()
    {
        var catalogue = Open();
        catalogue.Intake.Add(Entries.Of("a.jpg", "Tobias Brockwell\nBrackhaven"), By);
        catalogue.Intake.Add(Entries.Of("b.jpg", "Jo\u017Feph Penfold"), By);

        Assert.Equal("a.jpg", Assert.Single(catalogue.Search.Find(new SearchQuery { Text = "BROCKW" })).File);
        Assert.Equal("a.jpg", Assert.Single(catalogue.Search.Find(new SearchQuery { Text = "brackhaven" })).File);
        Assert.Equal("b.jpg", Assert.Single(catalogue.Search.Find(new SearchQuery { Text = "joseph" })).File);
        Assert.Empty(catalogue.Search.Find(new SearchQuery { Text = "Brackwell" }));
    }

    [Fact]
    public void A_word_spelt_otherwise_is_found_nearest_first()
    {
        var catalogue = Open();
        catalogue.Intake.Add(Entries.Of("two.jpg", "T Brackwall London"), By);
        catalogue.Intake.Add(Entries.Of("none.jpg", "Brockwell"), By);
        catalogue.Intake.Add(Entries.Of("one.jpg", "Brackwell"), By);
        catalogue.Intake.Add(Entries.Of("far.jpg", "Penfold"), By);

        var hits = catalogue.Search.Find(new SearchQuery { Near = "brockwell", Edits = 2 });

        Assert.Equal(["none.jpg", "one.jpg", "two.jpg"], hits.Select(hit => hit.File));
        Assert.Equal([0, 1, 2], hits.Select(hit => hit.Edits));
    }

    [Fact]
    public void A_pattern_with_unknown_letters_finds_every_spelling_that_fits()
    {
        var catalogue = Open();
        catalogue.Intake.Add(Entries.Of("a.jpg", "T. Brockwell"), By);
        catalogue.Intake.Add(Entries.Of("b.jpg", "Brackwall & Son"), By);
        catalogue.Intake.Add(Entries.Of("c.jpg", "Br?ckw??l"), By);
        catalogue.Intake.Add(Entries.Of("d.jpg", "Brickwork"), By);

        Assert.Equal(["c.jpg", "b.jpg", "a.jpg"], catalogue.Search.Find(new SearchQuery { Pattern = "Br?ckw.ll" }).Select(hit => hit.File));
        Assert.Equal(["d.jpg", "c.jpg"], catalogue.Search.Find(new SearchQuery { Pattern = "br?ck*k" }).Select(hit => hit.File));
        Assert.Throws<InscriptionLabException>(() => catalogue.Search.Find(new SearchQuery { Pattern = "?.*" }));
    }

    [Fact]
    public void Alternatives_of_the_reading_are_searched_only_when_asked_for()
    {
        var catalogue = Open();
        catalogue.Intake.Add(Entries.Of("a.jpg", "Tobias Breckwell"), By);

        Assert.Empty(catalogue.Search.Find(new SearchQuery { Pattern = "Brockwell" }));
        Assert.Single(catalogue.Search.Find(new SearchQuery { Pattern = "Brockwell", Alternatives = true }));
        Assert.Empty(catalogue.Search.Find(new SearchQuery { Pattern = "Brackwell", Alternatives = true }));
    }

    [Fact]
    public void Maker_finding_date_and_size_narrow_a_search()
    {
        var catalogue = Open();
        catalogue.Intake.Add(Entries.Of("a.jpg", "Brockwell", "agrees", "Tobias Brockwell", madeAt: Day(1)), By);
        catalogue.Intake.Add(Entries.Of("b.jpg", "Brackwell", "differs", "Tobias Brockwell", madeAt: Day(2)), By);
        catalogue.Intake.Add(Entries.Of("c.jpg", "Penfold", "agrees", "Jos. Penfold", madeAt: Day(3)), By);
        catalogue.Intake.Add(Entries.Measured("d.jpg", "cell", 39.9, 0.2), By);

        Assert.Equal(2, catalogue.Search.Find(new SearchQuery { Maker = "brockw" }).Length);
        Assert.Equal("b.jpg", Assert.Single(catalogue.Search.Find(new SearchQuery { Outcome = "differs" })).File);
        Assert.Equal(["b.jpg"], catalogue.Search.Find(new SearchQuery { From = Day(2), Before = Day(3) }).Select(hit => hit.File));
        Assert.Equal("d.jpg", Assert.Single(catalogue.Search.Find(new SearchQuery { FromMm = 40, ToMm = 41 })).File);
        Assert.Empty(catalogue.Search.Find(new SearchQuery { FromMm = 40.2, ToMm = 41 }));

        static DateTimeOffset Day(int day) => new(2026, 4, day, 0, 0, 0, TimeSpan.Zero);
    }

    [Fact]
    public void A_correction_lies_over_the_reading_and_never_replaces_it()
    {
        var catalogue = Open();
        var entry = Entries.Of("a.jpg", "Brackwell");
        catalogue.Intake.Add(entry, By);
        var number = catalogue.Search.Find(new SearchQuery())[0].Examination;

        catalogue.Desk.Correct(number, 0, "Brockwell", "A. Cataloguer", "The o is cut over a scratch.");

        var hit = Assert.Single(catalogue.Search.Find(new SearchQuery { Text = "Brockwell" }));
        Assert.Equal("Brockwell", hit.Text);
        Assert.Single(catalogue.Search.Find(new SearchQuery { Text = "Brackwell" }));
        using var context = catalogue.NewContext();
        Assert.Equal("Brackwell", context.Lines.Single().Text);
        Assert.Equal(entry.Record, context.Examinations.Single().Record);
        var kept = context.Corrections.Single();
        Assert.Equal(("Brackwell", "Brockwell", "A. Cataloguer"), (kept.Was, kept.Becomes, kept.ByWhom));
        Assert.Empty(catalogue.Health.Check());
    }

    [Fact]
    public void Every_step_can_be_undone_back_to_the_beginning()
    {
        var catalogue = Open();
        catalogue.Intake.Add(Entries.Of("a.jpg", "Brackwell", key: "tube-1"), By);
        var number = catalogue.Search.Find(new SearchQuery())[0].Examination;
        catalogue.Desk.Correct(number, 0, "Brockwell", By, "first");
        catalogue.Desk.Correct(number, 0, "Bruckwell", By, "second");
        catalogue.Desk.Describe("tube-1", "A tube", "three draws", "Brockwell", By);
        catalogue.Desk.MovePhoto(Entries.Hash("a.jpg"), "tube-2", By);
        catalogue.Desk.Trash("tube-2", trashed: true, By);
        Assert.Empty(catalogue.Search.Find(new SearchQuery()));
        Assert.Single(catalogue.Search.Find(new SearchQuery { InTrash = true }));

        catalogue.Desk.Undo();
        Assert.Equal("tube-2", catalogue.Search.Find(new SearchQuery())[0].ObjectKey);
        catalogue.Desk.Undo();
        Assert.Equal("tube-1", catalogue.Search.Find(new SearchQuery())[0].ObjectKey);
        catalogue.Desk.Undo();
        Assert.Equal("Bruckwell", catalogue.Search.Find(new SearchQuery())[0].Text);
        catalogue.Desk.Undo();
        Assert.Equal("Brockwell", catalogue.Search.Find(new SearchQuery())[0].Text);
        catalogue.Desk.Undo();
        Assert.Equal("Brackwell", catalogue.Search.Find(new SearchQuery())[0].Text);
        catalogue.Desk.Undo();
        Assert.Empty(catalogue.Search.Find(new SearchQuery()));
        Assert.Null(catalogue.Desk.Undo());
        Assert.Empty(catalogue.Health.Check());
        Assert.True(catalogue.Intake.Add(Entries.Of("a.jpg", "Brackwell", key: "tube-1"), By));
        Assert.Single(catalogue.Search.Find(new SearchQuery()));
    }

    [Fact]
    public void A_clock_set_back_and_forward_between_writes_changes_no_order_and_loses_nothing()
    {
        var clock = new TurnedClock(new DateTimeOffset(2026, 3, 1, 12, 0, 0, TimeSpan.Zero));
        var address = NewAddress();
        var catalogue = Cat.Open(address, clock);
        catalogue.Intake.Add(Entries.Of("a.jpg", "Brackwell", key: "tube-1"), By);
        clock.Now = clock.Now.AddYears(-30);
        catalogue.Desk.Correct(1, 0, "Brockwell", By, "first");
        clock.Now = clock.Now.AddYears(60);
        catalogue.Desk.Correct(1, 0, "Bruckwell", By, "second");
        clock.Now = DateTimeOffset.UnixEpoch.AddDays(-1);
        catalogue.Desk.Correct(1, 0, "Brickwell", By, "third");
        catalogue.Intake.Add(Entries.Of("b.jpg", "Penfold"), By);

        var again = Cat.Open(address, clock);
        Assert.Equal("Brickwell", Assert.Single(again.Search.Find(new SearchQuery { Text = "Brickwell" })).Text);
        Assert.Equal(["b.jpg was added.", "Brickwell", "Bruckwell", "Brockwell"], again.Desk.Steps(4).Select(step => step.Sentence.Split('"') is [_, var read, ..] ? read : step.Sentence));
        Assert.StartsWith("b.jpg", again.Desk.Undo()!, StringComparison.Ordinal);
        clock.Now = clock.Now.AddYears(90);
        again.Desk.Undo();
        Assert.Equal("Bruckwell", Assert.Single(again.Search.Find(new SearchQuery { ObjectKey = "tube-1" })).Text);
        again.Desk.Undo();
        again.Desk.Undo();
        Assert.Equal("Brackwell", Assert.Single(again.Search.Find(new SearchQuery { ObjectKey = "tube-1" })).Text);
        Assert.Empty(again.Health.Check());
        var exported = Exported(again);
        var copy = Open();
        copy.Archive.Import(new StringReader(exported));
        Assert.Equal(exported, Exported(copy));
    }

    [Fact]
    public void What_is_compared_by_likeness_follows_every_step()
    {
        var address = NewAddress();
        var (catalogue, other) = (Open(address), Open(address));
        Assert.Equal(0, catalogue.Likeness.Load().Count);
        catalogue.Intake.Add(Entries.Of("a.jpg", "Brockwell", key: "tube-1"), By);
        Assert.Same(catalogue.Likeness.Load(), catalogue.Likeness.Load());
        Assert.Equal(1, catalogue.Likeness.Load().Count);
        other.Intake.Add(Entries.Of("b.jpg", "Penfold", key: "tube-2"), By);
        Assert.Equal(2, catalogue.Likeness.Load().Count);
        other.Desk.Trash("tube-1", trashed: true, By);
        Assert.Equal(1, catalogue.Likeness.Load().Count);
        other.Desk.Undo();
        Assert.Equal(2, catalogue.Likeness.Load().Count);
        other.Desk.Undo();
        Assert.Equal(1, catalogue.Likeness.Load().Count);
        var line = catalogue.Likeness.LineOf(1, 0)!.Value;
        Assert.Equal(line, Assert.Single(catalogue.Likeness.Load().Nearest([.. catalogue.Likeness.Of(line)!], 3)).Id);
        Assert.Equal(1f, Assert.Single(catalogue.Likeness.Load().Nearest([.. catalogue.Likeness.Of(line)!], 3)).Likeness, 5);
    }

    [Fact]
    public void A_change_without_a_name_is_refused()
    {
        var catalogue = Open();
        catalogue.Intake.Add(Entries.Of("a.jpg", "Brackwell", key: "tube-1"), By);

        Assert.Contains("--by", Assert.Throws<InscriptionLabException>(() => catalogue.Desk.Trash("tube-1", true, " ")).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_catalogue_exported_and_imported_exports_to_the_same_text()
    {
        var catalogue = Open();
        catalogue.Intake.Add(Entries.Of("a.jpg", "Br\u00F6ckwell \u2019s \u017F\nLondon", "differs"), By);
        catalogue.Intake.Add(Entries.Measured("cell.jpg", "cell", 39.873215, 0.0712), By);
        catalogue.Intake.Refuse("broken.jpg", null, "The picture is cut off.");
        catalogue.Desk.Correct(1, 1, "LONDON", By, "capitals");
        catalogue.Desk.Describe("a.jpg", "A \"title\"", null, null, By);
        catalogue.Desk.Observe("a.jpg", [Seen("screws", "slotted, hand cut", null, 1850)], [], By);
        catalogue.Intake.Add(Joint("together.jpg"), By);
        var exported = Exported(catalogue);

        var second = Open();
        second.Archive.Import(new StringReader(exported));

        Assert.Equal(exported, Exported(second));
        Assert.Empty(second.Health.Check());
        Assert.True(second.Intake.Add(Entries.Of("later.jpg", "Penfold"), By));
    }

    [Fact]
    public void A_text_that_was_cut_off_leaves_the_catalogue_empty()
    {
        var catalogue = Open();
        catalogue.Intake.Add(Entries.Of("a.jpg", "Brockwell"), By);
        var exported = Exported(catalogue);
        var lines = exported.Split('\n', StringSplitOptions.RemoveEmptyEntries);

        foreach (var cut in new[] { string.Join('\n', lines[..^1]), string.Join('\n', lines[..^2].Append(lines[^1])), exported[..(exported.Length / 2)], "nonsense", string.Empty })
        {
            var second = Open();
            Assert.Throws<InscriptionLabException>(() => second.Archive.Import(new StringReader(cut)));
            Assert.Empty(second.Search.Find(new SearchQuery()));
            Assert.True(second.Intake.Add(Entries.Of("a.jpg", "Brockwell"), By));
        }
    }

    [Fact]
    public void A_record_changed_behind_the_program_is_noticed()
    {
        var catalogue = Open();
        catalogue.Intake.Add(Entries.Of("a.jpg", "Brockwell"), By);
        using (var context = catalogue.NewContext())
        {
            context.Examinations.Single().Record = Entries.Record("a.jpg", "Brackwell", "differs", "Tobias Brockwell");
            context.SaveChanges();
        }

        Assert.Contains("changed", Assert.Single(catalogue.Health.Check()), StringComparison.Ordinal);
    }

    [Fact]
    public void Many_threads_adding_the_same_work_add_it_once()
    {
        var address = NewAddress();
        var catalogue = Open(address);
        var added = 0;

        System.Threading.Tasks.Parallel.For(0, 40, new System.Threading.Tasks.ParallelOptions { MaxDegreeOfParallelism = 4 }, number =>
        {
            var name = string.Create(CultureInfo.InvariantCulture, $"{number % 10}.jpg");
            if (catalogue.Intake.Add(Entries.Of(name, "Brockwell", key: "one object"), By))
            {
                System.Threading.Interlocked.Increment(ref added);
            }
        });

        Assert.Equal(10, added);
        Assert.Equal(10, catalogue.Search.Find(new SearchQuery()).Length);
        Assert.Empty(catalogue.Health.Check());
    }

    [Fact]
    public void The_tables_are_those_of_the_model()
    {
        var catalogue = Open();
        catalogue.Intake.Add(Entries.Of("a.jpg", "Brockwell"), By);
        using var context = catalogue.NewContext();

        foreach (var entity in context.Model.GetEntityTypes())
        {
            var columns = ColumnsOf(context, Microsoft.EntityFrameworkCore.RelationalEntityTypeExtensions.GetTableName(entity)!);
            Assert.Equal(entity.GetProperties().Select(property => Microsoft.EntityFrameworkCore.RelationalPropertyExtensions.GetColumnName(property)).Order(StringComparer.Ordinal), columns);
        }
    }

    /// <summary>Gives a table's columns from the database itself, in alphabetical order.</summary>
    private protected abstract System.Collections.Generic.IEnumerable<string> ColumnsOf(CatalogueContext context, string table);

    private static string Exported(Cat catalogue)
    {
        using var text = new StringWriter { NewLine = "\n" };
        catalogue.Archive.Export(text);
        return text.ToString();
    }
}

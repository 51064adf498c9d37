using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Threading.Tasks;
using InscriptionLab.Cataloguing;
using InscriptionLab.Outcomes;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Xunit;
using Cat = InscriptionLab.Cataloguing.Catalogue;

namespace InscriptionLab.Catalogue.Tests.Cataloguing;

/// <summary>The catalogue in a file.</summary>
public sealed class SqliteCatalogueTests : CatalogueRules, IDisposable
{
    private const int Writes = 60;

    private readonly Scratch _scratch = new();
    private int _count;

    public void Dispose() => _scratch.Dispose();

    internal override string NewAddress() => _scratch.At(string.Create(CultureInfo.InvariantCulture, $"{++_count}.db"));

    [Fact]
    public void The_file_keeps_a_write_ahead_log()
    {
        var file = NewAddress();
        Cat.Open(file, TimeProvider.System);

        using var connection = new SqliteConnection($"Data Source={file}");
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = "PRAGMA journal_mode";
        Assert.Equal("wal", command.ExecuteScalar());
    }

    [Fact]
    public void A_new_schema_step_copies_the_file_first_and_keeps_what_is_there()
    {
        var file = NewAddress();
        Cat.Open(file, TimeProvider.System).Intake.Add(Entries.Of("a.jpg", "Brockwell"), "tester");

        var copy = Step(file, "ALTER TABLE objects ADD COLUMN place TEXT NULL;").BringUpToDate();

        Assert.True(File.Exists(copy));
        Assert.Single(Cat.Open(copy!, TimeProvider.System).Search.Find(new SearchQuery()));
        using var connection = new SqliteConnection($"Data Source={file}");
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = "SELECT count(*) FROM objects WHERE place IS NULL";
        Assert.Equal(1L, command.ExecuteScalar());
    }

    [Fact]
    public void A_copy_of_before_is_never_written_over_even_when_the_clock_stands_still()
    {
        var file = NewAddress();
        var clock = new TurnedClock(new DateTimeOffset(2026, 3, 1, 12, 0, 0, TimeSpan.Zero));
        var catalogue = Cat.Open(file, clock);
        catalogue.Intake.Add(Entries.Of("a.jpg", "Brockwell"), "tester");
        SchemaKeeper Keeper() => new(CatalogueAddress.Parse(file), SchemaStep.All.Add(new SchemaStep(SchemaStep.All.Length + 1, "next.sql", "ALTER TABLE objects ADD COLUMN place TEXT NULL;")), clock);
        var first = Keeper().BringUpToDate()!;
        SqliteConnection.ClearAllPools();
        File.Delete(file + "-wal");
        File.Delete(file + "-shm");
        File.Copy(first, file, overwrite: true);
        Cat.Open(file, clock).Intake.Add(Entries.Of("b.jpg", "Penfold"), "tester");

        var second = Keeper().BringUpToDate()!;

        Assert.NotEqual(first, second);
        Assert.Single(Cat.Open(first, clock).Search.Find(new SearchQuery()));
        Assert.Equal(2, Cat.Open(second, clock).Search.Find(new SearchQuery()).Length);
        Assert.Empty(Directory.GetFiles(_scratch.Folder, "*.unfinished"));
    }

    [Fact]
    public async Task Two_processes_that_write_one_catalogue_at_once_lose_nothing()
    {
        var file = NewAddress();
        Cat.Open(file, TimeProvider.System).Intake.Add(Entries.Of("both.jpg", "Brackwell", key: "tube-1"), "tester");

        using var one = OtherProcess.Start(typeof(SqliteCatalogueTests), nameof(Write_as_a_process), file, "one");
        using var two = OtherProcess.Start(typeof(SqliteCatalogueTests), nameof(Write_as_a_process), file, "two");
        await Task.WhenAll(one.WaitForExitAsync(TestContext.Current.CancellationToken), two.WaitForExitAsync(TestContext.Current.CancellationToken));

        var catalogue = Cat.Open(file, TimeProvider.System);
        Assert.Equal((0, 0), (one.ExitCode, two.ExitCode));
        Assert.Empty(catalogue.Health.Check());
        Assert.Equal(1 + (2 * Writes), catalogue.Search.Find(new SearchQuery { Most = int.MaxValue }).Length);
        var steps = catalogue.Desk.Steps(int.MaxValue);
        foreach (var who in new[] { "one", "two" })
        {
            Assert.Equal(Enumerable.Range(0, Writes).Select(number => $"Line 1 of examination 1 was read as \"{who} {number}\"."), steps.Where(step => step.By == who && step.Sentence.StartsWith("Line", StringComparison.Ordinal)).Select(step => step.Sentence).Reverse());
        }

        using var context = catalogue.NewContext();
        var corrections = context.Corrections.OrderBy(row => row.Id).ToList();
        Assert.Equal(2 * Writes, corrections.Count);
        Assert.All(corrections.Zip(corrections.Skip(1)), pair => Assert.Equal(pair.First.Becomes, pair.Second.Was));
        var shown = context.Objects.Single(row => row.Key == "tube-1");
        Assert.Equal(($"one {Writes - 1}", $"two {Writes - 1}"), (shown.Title, shown.Note));
    }

    /// <summary>One of the two processes; nothing by itself.</summary>
    [Fact(Explicit = true)]
    public void Write_as_a_process()
    {
        if (OtherProcess.Told() is not var (file, who))
        {
            return;
        }

        var catalogue = Cat.Open(file, TimeProvider.System);
        for (var number = 0; number < Writes; number++)
        {
            var text = string.Create(CultureInfo.InvariantCulture, $"{who} {number}");
            catalogue.Desk.Correct(1, 0, text, who, string.Empty);
            catalogue.Intake.Add(Entries.Of(text + ".jpg", "Penfold", key: "tube-2"), who);

            // Each process has a field of its own; what the other wrote in its field must stay.
            catalogue.Desk.Describe("tube-1", who == "one" ? text : null, who == "two" ? text : null, null, who);
        }
    }

    [Fact]
    public void A_catalogue_of_the_first_schema_is_copied_and_brought_up_to_date()
    {
        var file = NewAddress();
        new SchemaKeeper(CatalogueAddress.Parse(file), [SchemaStep.All[0]], TimeProvider.System).BringUpToDate();
        using (var connection = new SqliteConnection($"Data Source={file}"))
        {
            connection.Open();
            using var command = connection.CreateCommand();
            command.CommandText = "INSERT INTO objects (key, created_at) VALUES ('tube-1', 0)";
            command.ExecuteNonQuery();
        }

        var catalogue = Cat.Open(file, TimeProvider.System);
        catalogue.Desk.Observe("tube-1", [new ObservationEntry("draws", "3", null, null, string.Empty, "A. Cataloguer", DateTimeOffset.UnixEpoch)], [], "tester");

        Assert.True(File.Exists(catalogue.CopyMade));
        using var context = catalogue.NewContext();
        Assert.Equal(("tube-1", 1), (context.Objects.Single().Key, context.Observations.Count()));
    }

    [Fact]
    public void Embeddings_are_read_from_indexes_alone()
    {
        var file = NewAddress();
        var catalogue = Cat.Open(file, TimeProvider.System);
        catalogue.Intake.Add(Entries.Of("a.jpg", "Brockwell", key: "tube-1"), "tester");
        catalogue.Desk.Trash("tube-1", trashed: true, "tester");

        var plan = Plan(file, LikenessSource.Question);

        // A table of the plan is walked ("SCAN") or looked up ("SEARCH"); what holds all that is asked for is a covering index.
        Assert.Contains("SCAN marks USING COVERING INDEX marks_line_id_embedding", plan);
        Assert.All(plan.Where(step => step.StartsWith("SCAN", StringComparison.Ordinal) || step.StartsWith("SEARCH", StringComparison.Ordinal)), step => Assert.Contains("COVERING INDEX", step, StringComparison.Ordinal));
        Assert.DoesNotContain(plan, step => step.Contains("TEMP B-TREE FOR ORDER BY", StringComparison.Ordinal));
        Assert.Contains(Plan(file, LikenessSource.StateQuestion), step => step.Contains("changes USING COVERING INDEX changes_undone_at", StringComparison.Ordinal));
    }

    [Fact]
    public void A_catalogue_of_the_second_schema_keeps_its_embeddings_and_is_asked_as_fast_afterwards()
    {
        var file = NewAddress();
        var address = CatalogueAddress.Parse(file);
        new SchemaKeeper(address, SchemaStep.All[..2], TimeProvider.System).BringUpToDate();
        new Intake(() => new CatalogueContext(address), TimeProvider.System).Add(Entries.Of("a.jpg", "Brockwell"), "tester");

        var catalogue = Cat.Open(file, TimeProvider.System);

        Assert.True(File.Exists(catalogue.CopyMade));
        Assert.Equal(1L, Assert.Single(catalogue.Likeness.Load().Nearest([.. catalogue.Likeness.Of(1)!], 3)).Id);
        Assert.Contains("SCAN marks USING COVERING INDEX marks_line_id_embedding", Plan(file, LikenessSource.Question));
        Assert.Empty(catalogue.Health.Check());
    }

    private static List<string> Plan(string file, string question)
    {
        using var connection = new SqliteConnection($"Data Source={file}");
        connection.Open();
        using var command = connection.CreateCommand();
#pragma warning disable CA2100 // The question is the program's own.
        command.CommandText = "EXPLAIN QUERY PLAN " + question;
#pragma warning restore CA2100
        using var reader = command.ExecuteReader();
        var plan = new List<string>();
        while (reader.Read())
        {
            plan.Add(reader.GetString(3));
        }

        return plan;
    }

    [Fact]
    public void A_schema_step_that_fails_changes_nothing()
    {
        var file = NewAddress();
        Cat.Open(file, TimeProvider.System).Intake.Add(Entries.Of("a.jpg", "Brockwell"), "tester");

        Assert.Throws<InscriptionLabException>(() => Step(file, "ALTER TABLE objects ADD COLUMN place TEXT NULL; THIS IS NO SQL;").BringUpToDate());

        var catalogue = Cat.Open(file, TimeProvider.System);
        Assert.Single(catalogue.Search.Find(new SearchQuery()));
        using var context = catalogue.NewContext();
        Assert.DoesNotContain("place", ColumnsOf(context, "objects"));
    }

    [Fact]
    public void A_catalogue_of_a_newer_program_is_refused_in_one_sentence()
    {
        var file = NewAddress();
        Cat.Open(file, TimeProvider.System);
        Step(file, "ALTER TABLE objects ADD COLUMN place TEXT NULL;").BringUpToDate();

        var problem = Assert.Throws<InscriptionLabException>(() => Cat.Open(file, TimeProvider.System));

        Assert.Contains("newer", problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_that_is_no_catalogue_is_refused_in_one_sentence()
    {
        var file = NewAddress();
        File.WriteAllText(file, "This is a letter and not a database. It is long enough to be looked at as one, though it has no header at all.");

        Assert.Contains("cannot be opened", Assert.Throws<InscriptionLabException>(() => Cat.Open(file, TimeProvider.System)).Message, StringComparison.Ordinal);
        Assert.Contains("folder", Assert.Throws<InscriptionLabException>(() => Cat.Open(_scratch.Folder, TimeProvider.System)).Message, StringComparison.Ordinal);
        Assert.Throws<InscriptionLabException>(() => Cat.Open(" ", TimeProvider.System));
    }

    private protected override IEnumerable<string> ColumnsOf(CatalogueContext context, string table) =>
        [.. context.Database.SqlQuery<string>($"SELECT name AS Value FROM pragma_table_info({table})").AsEnumerable().Order(StringComparer.Ordinal)];

    private static SchemaKeeper Step(string file, string sql) =>
        new(CatalogueAddress.Parse(file), SchemaStep.All.Add(new SchemaStep(SchemaStep.All.Length + 1, "next.sql", sql)), TimeProvider.System);
}

using System;
using System.Collections.Immutable;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Threading.Tasks;
using InscriptionLab.Cataloguing;
using Microsoft.Data.Sqlite;
using Xunit;

namespace InscriptionLab.Catalogue.Tests.Cataloguing;

/// <summary>A catalogue of the oldest schema, brought up to date by a process that is killed in the middle: afterwards it is the old one or the new one, whole, and so is every copy.</summary>
public sealed class KilledUpgradeTests : IDisposable
{
    private const int Entered = 300;

    /// <summary>What a step to come may do, after all there are: a column, a table filled from another, an index; large enough to take a while.</summary>
    private static readonly SchemaStep Next = new(SchemaStep.All.Length + 1, "next.sql", """
        ALTER TABLE objects ADD COLUMN place TEXT NULL;
        CREATE TABLE letters (id {id}, line_id {long} NOT NULL, text TEXT NOT NULL);
        INSERT INTO letters (line_id, text) SELECT a.id, b.letters FROM lines a, lines b WHERE b.id <= 10;
        CREATE INDEX letters_text ON letters (text);
        """);

    private static readonly ImmutableArray<SchemaStep> Oldest = [SchemaStep.All[0]];

    private static readonly ImmutableArray<SchemaStep> Newest = SchemaStep.All.Add(Next);

    private readonly Scratch _scratch = new();

    public void Dispose() => _scratch.Dispose();

    [Fact]
    public Task An_upgrade_killed_a_few_times_leaves_the_old_catalogue_or_the_new() => KillAsync(5, 3);

    /// <summary>Takes minutes: by hand. The environment may ask for another number.</summary>
    [Fact(Explicit = true)]
    public Task An_upgrade_killed_many_times_leaves_the_old_catalogue_or_the_new() => KillAsync(int.TryParse(Environment.GetEnvironmentVariable("INSCRIPTIONLAB_KILLS"), out var kills) ? kills : 100, 20261130);

    /// <summary>The process that is killed; nothing by itself.</summary>
    [Fact(Explicit = true)]
    public void Upgrade_as_a_process()
    {
        if (OtherProcess.Told() is not var (file, begun))
        {
            return;
        }

        File.WriteAllText(begun, "begun");
        new SchemaKeeper(CatalogueAddress.Parse(file), Newest, TimeProvider.System).BringUpToDate();
        File.WriteAllText(begun, "done");
    }

    private async Task KillAsync(int kills, int seed)
    {
        var original = _scratch.At("original.db");
        MakeOldest(original);
        var before = Rows(original);
        File.Copy(original, _scratch.At("timed.db"));
        var unbroken = (await UpgradeAsync(_scratch.At("timed.db"), null))!.Value;

        var random = new Random(seed);
        var (upgraded, copies, untouched, fell) = (0, 0, 0, 0);
        for (var kill = 0; kill < kills; kill++)
        {
            var file = _scratch.At(string.Create(CultureInfo.InvariantCulture, $"{kill}/kept.db"));
            Directory.CreateDirectory(Path.GetDirectoryName(file)!);
            File.Copy(original, file);

            // Two kills one after the other, then nobody stops it; the very first one at once, so that at least one surely falls before the end.
            fell += await UpgradeAsync(file, kill == 0 ? 0 : random.NextDouble() * unbroken) is null ? 1 : 0;
            fell += await UpgradeAsync(file, random.NextDouble() * unbroken) is null ? 1 : 0;
            var steps = Steps(file);
            Assert.Contains(steps, new[] { Oldest.Length, Newest.Length });
            Assert.Equal("ok", Ask(file, "SELECT group_concat(integrity_check) FROM pragma_integrity_check"));
            Assert.Equal(before, Rows(file));
            Assert.Equal(steps == Newest.Length ? "1" : "0", Ask(file, "SELECT count(*) FROM pragma_table_info('objects') WHERE name = 'place'"));
            Assert.Equal(steps == Newest.Length ? (Entered * 10).ToString(CultureInfo.InvariantCulture) : "none", Ask(file, steps == Newest.Length ? "SELECT count(*) FROM letters" : "SELECT coalesce(max(name), 'none') FROM sqlite_master WHERE name = 'letters'"));
            Assert.Equal(steps == Newest.Length ? "3" : "0", Ask(file, "SELECT count(*) FROM sqlite_master WHERE name IN ('observations', 'pictures', 'marks_line_id_embedding')"));
            (upgraded, untouched) = steps == Newest.Length ? (upgraded + 1, untouched) : (upgraded, untouched + 1);
            foreach (var copy in Directory.GetFiles(Path.GetDirectoryName(file)!, "*.bak"))
            {
                copies++;
                Assert.Equal("ok", Ask(copy, "SELECT group_concat(integrity_check) FROM pragma_integrity_check"));
                Assert.Equal(before, Rows(copy));
                Assert.Equal(1, Steps(copy));
            }

            var whole = await UpgradeAsync(file, null);
            Assert.NotNull(whole);

            // Other programs on the machine make single runs slow: kills fall within the shortest one seen.
            unbroken = steps == 1 ? Math.Min(unbroken, whole.Value) : unbroken;
            Assert.Equal((Newest.Length, before), (Steps(file), Rows(file)));
            Assert.NotEmpty(Directory.GetFiles(Path.GetDirectoryName(file)!, "*.bak"));
            SqliteConnection.ClearAllPools();
            Directory.Delete(Path.GetDirectoryName(file)!, recursive: true);
        }

        TestContext.Current.TestOutputHelper?.WriteLine(FormattableString.Invariant($"{kills} catalogues of {Entered} examinations, each upgrade killed twice at random ({fell} of {2 * kills} kills before its end): {untouched} were the old catalogue, {upgraded} the new one, {copies} copies, all whole; an upgrade that nothing stops takes {unbroken:0} ms"));
        Assert.True(fell > 0, "No kill fell before the end of an upgrade.");
    }

    /// <summary>Upgrades a catalogue in a process of its own.</summary>
    /// <param name="file">The catalogue.</param>
    /// <param name="killAfter">Milliseconds from its beginning to the kill; null for none.</param>
    /// <returns>Milliseconds that it took; null where it was killed.</returns>
    private async Task<double?> UpgradeAsync(string file, double? killAfter)
    {
        var mark = _scratch.At("begun");
        File.Delete(mark);
        using var process = OtherProcess.Start(typeof(KilledUpgradeTests), nameof(Upgrade_as_a_process), file, mark);
        var cancel = TestContext.Current.CancellationToken;
        while (!File.Exists(mark) && !process.HasExited)
        {
            await Task.Delay(1, cancel);
        }

        var clock = System.Diagnostics.Stopwatch.StartNew();
        if (killAfter is { } wait)
        {
            await Task.WhenAny(process.WaitForExitAsync(cancel), Task.Delay(TimeSpan.FromMilliseconds(wait), cancel));
            process.Kill();
            await process.WaitForExitAsync(cancel);
        }
        else
        {
            while (File.ReadAllText(mark) != "done" && !process.HasExited)
            {
                await Task.Delay(1, cancel);
            }
        }

        var took = clock.Elapsed.TotalMilliseconds;
        await process.WaitForExitAsync(cancel);
        return File.ReadAllText(mark) == "done" ? took : null;
    }

    private static void MakeOldest(string file)
    {
        new SchemaKeeper(CatalogueAddress.Parse(file), Oldest, TimeProvider.System).BringUpToDate();
        var intake = new Intake(() => new CatalogueContext(CatalogueAddress.Parse(file)), TimeProvider.System);
        for (var number = 0; number < Entered; number++)
        {
            intake.Add(Entries.Of(string.Create(CultureInfo.InvariantCulture, $"{number}.jpg"), "Tobias Brockwell"), "tester");
        }

        SqliteConnection.ClearAllPools();
        Ask(file, "PRAGMA wal_checkpoint(TRUNCATE)");
    }

    private static int Steps(string file) => int.Parse(Ask(file, "SELECT count(*) FROM schema_steps"), CultureInfo.InvariantCulture);

    /// <summary>Gives a digest of every row of the first schema.</summary>
    private static string Rows(string file) => string.Join(' ', new[] { "objects", "photos", "examinations", "lines", "marks", "nearest_forms", "changes" }.Select(table =>
        Ask(file, $"SELECT count(*) || ':' || coalesce(sum(id), 0) FROM {table}"))) + Ask(file, "SELECT group_concat(record_sha256) FROM (SELECT record_sha256 FROM examinations ORDER BY id)") + Ask(file, "SELECT sum(length(picture) + length(embedding)) FROM marks");

    private static string Ask(string file, string question)
    {
        using var connection = new SqliteConnection($"Data Source={file};Pooling=False");
        connection.Open();
        using var command = connection.CreateCommand();
#pragma warning disable CA2100 // The question is the test's own.
        command.CommandText = question;
#pragma warning restore CA2100
        return Convert.ToString(command.ExecuteScalar(), CultureInfo.InvariantCulture)!;
    }
}

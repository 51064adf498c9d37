using System;
using System.Collections.Concurrent;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Threading;
using System.Threading.Tasks;
using DuckDB.NET.Data;
using InscriptionLab.Catalogue.Tests.Cataloguing;
using InscriptionLab.Outcomes;
using InscriptionLab.Surveys;
using InscriptionLab.Tables;
using Xunit;

namespace InscriptionLab.Catalogue.Tests.Surveys;

public sealed class SurveyRunTests : IDisposable
{
    private const string Settings = "program 1, list 1";
    private readonly Scratch _scratch = new();
    private readonly ConcurrentBag<string> _examined = [];

    public void Dispose() => _scratch.Dispose();

    [Fact]
    public async Task Every_file_has_one_row_and_bad_files_do_not_stop_the_survey()
    {
        Photo("a.jpg", "agrees Brockwell");
        Photo("b.png", "damaged -");
        Photo("c.jpg", "breaks -");
        Photo("notes.txt", "no photo");

        var result = await RunAsync("out");

        Assert.Equal((3, 1, 2, 1), (result.Photos, result.ExaminedNow, result.Unusable, result.Others));
        var rows = Csv("out", "photos.csv");
        Assert.Equal(["agrees", "unusable", "unusable"], rows.Select(row => row["outcome"]));
        Assert.Equal(Entries.Hash("agrees Brockwell"), rows[0]["sha256"]);
        Assert.Contains("cut off", Csv("out", "unusable.csv")[0]["reason"], StringComparison.Ordinal);
        Assert.Contains("KeyNotFoundException", Csv("out", "unusable.csv")[1]["reason"], StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_same_bytes_are_examined_once_and_share_their_result()
    {
        Photo("a.jpg", "differs Brackwell");
        Photo("b.jpg", "differs Brackwell");

        await RunAsync("out");

        Assert.Single(_examined);
        var rows = Csv("out", "photos.csv");
        Assert.Equal(["differs", "differs"], rows.Select(row => row["outcome"]));
        Assert.EndsWith("a.jpg", rows[1]["same_as"], StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_run_of_many_workers_gives_the_same_tables_as_one_worker()
    {
        ManyPhotos(60);

        await RunAsync("one", workers: 1);
        await RunAsync("four", workers: 4);

        Assert.Equal(Tables("one"), Tables("four"));
    }

    [Fact]
    public async Task A_survey_killed_twenty_times_ends_as_one_that_was_not_and_does_nothing_twice()
    {
        const int Kills = 20;
        ManyPhotos(80);
        await RunAsync("whole");
        _examined.Clear();
        var random = new Random(4711);
        var kept = new HashSet<string>(StringComparer.Ordinal);

        for (var kill = 0; kill < Kills; kill++)
        {
            using var stop = new CancellationTokenSource();
            var stopAt = _examined.Count + random.Next(1, 5);
            await Assert.ThrowsAnyAsync<OperationCanceledException>(() => RunAsync("broken", workers: 2, before: count => StopFrom(count, stopAt, stop), stop: stop));
            CutTheLastLine(random);
            kept.UnionWith(Done("broken"));
        }

        _examined.Clear();
        await RunAsync("broken", workers: 2);

        Assert.Empty(_examined.Intersect(kept, StringComparer.Ordinal));
        Assert.Equal(_examined.Count, _examined.Distinct(StringComparer.Ordinal).Count());
        Assert.Equal(Tables("whole"), Tables("broken"));

        static void StopFrom(int count, int stopAt, CancellationTokenSource stop)
        {
            if (count >= stopAt)
            {
                stop.Cancel();
            }
        }
    }

    [Fact]
    public async Task A_photo_that_kills_the_program_each_time_is_left_out_in_the_end()
    {
        Photo("a.jpg", "agrees Brockwell");
        Photo("b.jpg", "agrees Penfold");
        var options = new SurveyOptions();
        Directory.CreateDirectory(_scratch.At("out"));
        for (var time = 0; time < options.MostBegins; time++)
        {
            using var journal = SurveyJournal.Open(_scratch.At("out", SurveyRun.JournalName), Settings, options, TimeProvider.System);
            journal.Add(new JournalEntry { Begins = _scratch.At("photos", "a.jpg") });
        }

        await RunAsync("out");

        Assert.Equal([_scratch.At("photos", "b.jpg")], _examined);
        Assert.Contains("25 times", Csv("out", "unusable.csv")[0]["reason"], StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_photo_for_which_there_was_no_time_is_tried_again_by_the_next_run_with_those_that_share_its_bytes()
    {
        Photo("a.jpg", "slow Brockwell");
        Photo("b.jpg", "slow Brockwell");
        Photo("c.jpg", "agrees Penfold");

        await RunAsync("out", hasTime: () => false);

        Assert.Equal(["unusable", "unusable", "agrees"], Csv("out", "photos.csv").Select(row => row["outcome"]));
        Assert.Contains("too long", Csv("out", "unusable.csv")[0]["reason"], StringComparison.Ordinal);
        _examined.Clear();
        File.Delete(_scratch.At("photos", "a.jpg"));

        await RunAsync("out", hasTime: () => true);

        Assert.Equal([_scratch.At("photos", "b.jpg")], _examined);
        Assert.Equal(["slow", "agrees"], Csv("out", "photos.csv").Select(row => row["outcome"]));
        _examined.Clear();
        await RunAsync("out", hasTime: () => false);
        Assert.Empty(_examined);
    }

    [Fact]
    public async Task A_photo_for_which_there_is_never_time_is_left_out_in_the_end()
    {
        Photo("a.jpg", "slow Brockwell");
        var options = new SurveyOptions();
        for (var run = 0; run < options.MostBegins + 2; run++)
        {
            await RunAsync("out", hasTime: () => false);
        }

        Assert.Equal(options.MostBegins, _examined.Count);
        Assert.Contains("25 times", Csv("out", "unusable.csv")[0]["reason"], StringComparison.Ordinal);
    }

    [Fact]
    public async Task Damaged_lines_of_the_journal_are_counted_and_their_photos_examined_again()
    {
        Photo("a.jpg", "agrees Brockwell");
        Photo("b.jpg", "agrees Penfold");
        Assert.Equal(0, (await RunAsync("out")).Damaged);
        _examined.Clear();
        Damage(line => line.Contains("Penfold", StringComparison.Ordinal));

        var result = await RunAsync("out");

        Assert.Equal((1, 1), (result.Damaged, result.ExaminedNow));
        Assert.Equal([_scratch.At("photos", "b.jpg")], _examined);
    }

    [Fact]
    public async Task A_journal_whose_first_line_is_damaged_is_not_taken_for_one_of_other_settings()
    {
        Photo("a.jpg", "agrees Brockwell");
        await RunAsync("out");
        Damage(line => line.Contains("program 1", StringComparison.Ordinal));

        var refused = (await Assert.ThrowsAsync<InscriptionLabException>(() => RunAsync("out"))).Message;

        Assert.Contains("first line", refused, StringComparison.Ordinal);
        Assert.Contains("--out", refused, StringComparison.Ordinal);
        Assert.DoesNotContain("another program", refused, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_changed_photo_is_examined_again_and_others_are_not()
    {
        Photo("a.jpg", "agrees Brockwell");
        Photo("b.jpg", "agrees Penfold");
        await RunAsync("out");
        _examined.Clear();
        Photo("a.jpg", "differs Brackwell");

        await RunAsync("out");

        Assert.Equal([_scratch.At("photos", "a.jpg")], _examined);
        Assert.Equal("differs", Csv("out", "photos.csv")[0]["outcome"]);
    }

    [Fact]
    public async Task Other_settings_or_a_second_survey_in_the_same_folder_are_refused()
    {
        Photo("a.jpg", "agrees Brockwell");
        await RunAsync("out");

        Assert.Contains("--out", (await Assert.ThrowsAsync<InscriptionLabException>(() => RunAsync("out", settings: "program 2"))).Message, StringComparison.Ordinal);
        using var journal = SurveyJournal.Open(_scratch.At("out", SurveyRun.JournalName), Settings, new SurveyOptions(), TimeProvider.System);
        Assert.Contains("another survey", (await Assert.ThrowsAsync<InscriptionLabException>(() => RunAsync("out"))).Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Photos_are_grouped_by_folder_or_by_the_table_beside_them_and_counted_by_what_they_are_offered_as()
    {
        Photo("tube-1/a.jpg", "agrees Brockwell");
        Photo("tube-1/b.jpg", "nothing-read x");
        Photo("c.jpg", "differs Brackwell");
        Photo("d.jpg", "agrees Penfold");
        File.WriteAllText(_scratch.At("objects.csv"), "file,object,offered_as\nc.jpg,lot 7,Brockwell\nd.jpg,lot 7,Brockwell\ntube-1/a.jpg,lot 8,Brockwell\n");

        var byFolder = await RunAsync("folders");
        var byTable = await RunAsync("table", objects: _scratch.At("objects.csv"));

        Assert.Equal(["c.jpg", "d.jpg", "tube-1"], Csv("folders", "objects.csv").Select(row => row["object"]));
        Assert.Equal(["differs", "agrees", "agrees"], Csv("folders", "objects.csv").Select(row => row["outcome"]));
        Assert.Contains(byFolder.Counts, count => count is { Group: "objects", Outcome: "agrees", Count: 2, Of: 3 });
        Assert.Contains(byTable.Counts, count => count is { Group: "offered as Brockwell", Outcome: "agrees", Count: 1, Of: 2 });
        Assert.Contains(">2 offered as Brockwell<", File.ReadAllText(_scratch.At("table", "index.html")), StringComparison.Ordinal);
        Assert.Contains(byTable.Counts, count => count is { Group: "offered as Brockwell", Outcome: "undecided", Count: 1, Of: 2 });
    }

    [Fact]
    public async Task The_parquet_table_says_what_the_csv_says()
    {
        ManyPhotos(30);
        await RunAsync("out");

        await using var duck = new DuckDBConnection("Data Source=:memory:");
        await duck.OpenAsync(TestContext.Current.CancellationToken);
        await using var command = duck.CreateCommand();
        command.CommandText = $"SELECT * FROM read_parquet('{_scratch.At("out", "photos.parquet")}') ORDER BY file";
        await using var reader = await command.ExecuteReaderAsync(TestContext.Current.CancellationToken);
        var rows = Csv("out", "photos.csv");
        var index = 0;
        while (await reader.ReadAsync(TestContext.Current.CancellationToken))
        {
            Assert.All(rows[index], pair => Assert.Equal(pair.Value, reader.GetString(reader.GetOrdinal(pair.Key))));
            index++;
        }

        Assert.Equal(30, index);
    }

    [Fact]
    public async Task The_overview_shows_every_photo_and_no_text_of_a_photo_becomes_markup()
    {
        Photo("a.jpg", "agrees <script>alert(1)</script>");
        ManyPhotos(450);

        await RunAsync("out");

        var pages = Directory.GetFiles(_scratch.At("out"), "*.html").Select(File.ReadAllText).ToList();
        Assert.Equal(3, pages.Count);
        Assert.Equal(451, pages.Sum(page => page.Split("<figure>").Length - 1));
        Assert.DoesNotContain("<script>", string.Concat(pages), StringComparison.Ordinal);
        Assert.DoesNotContain("http", string.Concat(pages), StringComparison.Ordinal);
    }

    private Task<SurveyResult> RunAsync(string to, int workers = 1, string settings = Settings, string? objects = null, Action<int>? before = null, CancellationTokenSource? stop = null, Func<bool>? hasTime = null) =>
        new SurveyRun(
            new SurveyRequest([_scratch.At("photos")], _scratch.At(to), workers, objects, settings),
            new SurveyOptions(),
            () => new PretendExaminer(_examined, before, hasTime),
            null,
            TimeProvider.System).RunAsync(_ => { }, stop?.Token ?? TestContext.Current.CancellationToken);

    private void Photo(string name, string content)
    {
        var file = _scratch.At("photos", name);
        Directory.CreateDirectory(Path.GetDirectoryName(file)!);
        File.WriteAllText(file, content);
    }

    private void ManyPhotos(int count)
    {
        for (var number = 0; number < count; number++)
        {
            var finding = (number % 4) switch { 0 => "agrees", 1 => "differs", 2 => "undecided", _ => "nothing-read" };
            Photo(string.Create(CultureInfo.InvariantCulture, $"many/{number:0000}.jpg"), string.Create(CultureInfo.InvariantCulture, $"{finding} Maker, \"No {number}\""));
        }
    }

    /// <summary>Leaves the journal as a kill in the middle of writing may leave it.</summary>
    private void CutTheLastLine(Random random)
    {
        using var file = new FileStream(_scratch.At("broken", SurveyRun.JournalName), FileMode.Open);
        file.SetLength(file.Length - random.Next(0, 40));
    }

    /// <summary>Changes one sign of the journal's lines that fit.</summary>
    private void Damage(Func<string, bool> fits)
    {
        var journal = _scratch.At("out", SurveyRun.JournalName);
        File.WriteAllLines(journal, File.ReadAllLines(journal).Select(line => fits(line) ? line.Replace("\"", "'", StringComparison.Ordinal) : line));
    }

    private IEnumerable<string> Done(string to)
    {
        using var journal = SurveyJournal.Open(_scratch.At(to, SurveyRun.JournalName), Settings, new SurveyOptions(), TimeProvider.System);
        return [.. journal.Examined.Values];
    }

    private List<Dictionary<string, string>> Csv(string to, string name)
    {
        var table = CsvTable.Read(File.ReadAllText(_scratch.At(to, name)));
        return [.. table.Skip(1).Select(row => table[0].Zip(row).ToDictionary(pair => pair.First, pair => pair.Second, StringComparer.Ordinal))];
    }

    private string Tables(string to) => string.Concat(new[] { "photos.csv", "objects.csv", "unusable.csv", "records.jsonl", "counts.json", "index.html" }.Select(name => File.ReadAllText(_scratch.At(to, name))));
}

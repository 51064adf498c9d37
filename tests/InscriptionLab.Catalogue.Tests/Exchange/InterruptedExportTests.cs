using System;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Threading;
using System.Threading.Tasks;
using InscriptionLab.Catalogue.Tests.Cataloguing;
using InscriptionLab.Catalogue.Tests.Services;
using InscriptionLab.Exchange;
using InscriptionLab.Files;
using InscriptionLab.Outcomes;
using Microsoft.Data.Sqlite;
using Xunit;
using Cat = InscriptionLab.Cataloguing.Catalogue;

namespace InscriptionLab.Catalogue.Tests.Exchange;

/// <summary>Data sets and exports that are stopped, or whose process is killed: under the name asked for there is the whole or nothing.</summary>
public sealed class InterruptedExportTests : IDisposable
{
    private const int Entered = 120;
    private const string Leftover = "left.png";

    private readonly Scratch _scratch = new();

    public void Dispose() => _scratch.Dispose();

    [Fact]
    public void A_data_set_that_is_stopped_leaves_nothing()
    {
        var catalogue = Filled(_scratch.At("kept.db"));
        foreach (var (folder, isThere) in new[] { ("new", false), ("there", true) })
        {
            if (isThere)
            {
                Directory.CreateDirectory(_scratch.At(folder));
            }

            using var cancel = new CancellationTokenSource();
            var request = new DatasetRequest(_scratch.At(folder), null, 1);

            Assert.Throws<OperationCanceledException>(() => new DatasetFolder(catalogue, TimeProvider.System).Write(request, new Stopper(cancel), cancel.Token));

            Assert.Equal(isThere, Directory.Exists(_scratch.At(folder)));
            Assert.False(isThere && Directory.EnumerateFileSystemEntries(_scratch.At(folder)).Any());
            Assert.Empty(Directory.GetFileSystemEntries(_scratch.Folder, "*.unfinished"));
        }
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void What_a_killed_run_left_is_cleared_away_and_is_not_part_of_the_next(bool isThere)
    {
        var left = isThere ? _scratch.At("set", ".unfinished") : _scratch.At("set.unfinished");
        Directory.CreateDirectory(Path.Combine(left, "whole", "data", "lines"));
        File.WriteAllText(Path.Combine(left, "whole", "data", "lines", Leftover), "half");
        File.WriteAllText(Path.Combine(left, WholeFolder.Mark), string.Empty);

        new DatasetFolder(Filled(_scratch.At("kept.db")), TimeProvider.System).Write(new DatasetRequest(_scratch.At("set"), null, 1), null, CancellationToken.None);

        Assert.False(Directory.Exists(left));
        Assert.Empty(Directory.GetFiles(_scratch.At("set"), Leftover, SearchOption.AllDirectories));
        Assert.Equal(Entered, Directory.GetFiles(_scratch.At("set", "data", "lines")).Length);
        AssertSound(_scratch.At("set"));
    }

    [Fact]
    public void A_folder_of_the_users_own_in_the_way_is_named_and_left_alone()
    {
        var own = _scratch.At("set.unfinished");
        Directory.CreateDirectory(own);
        File.WriteAllText(Path.Combine(own, "notes.txt"), "of the user");

        var problem = Assert.Throws<InscriptionLabException>(() => new DatasetFolder(Filled(_scratch.At("kept.db")), TimeProvider.System).Write(new DatasetRequest(_scratch.At("set"), null, 1), null, CancellationToken.None));

        Assert.Contains("is in the way", problem.Message, StringComparison.Ordinal);
        Assert.Equal("of the user", File.ReadAllText(Path.Combine(own, "notes.txt")));
        Assert.False(Directory.Exists(_scratch.At("set")));
    }

    [Fact]
    public async Task An_export_goes_over_files_of_the_same_names_and_leaves_others()
    {
        using var bench = new ExportBench();
        Directory.CreateDirectory(bench.At("parquet"));
        await File.WriteAllTextAsync(bench.At("parquet", "lines.parquet"), "of before", TestContext.Current.CancellationToken);
        await File.WriteAllTextAsync(bench.At("parquet", "notes.txt"), "of the user", TestContext.Current.CancellationToken);

        await bench.ExportAsync("parquet", null);

        Assert.Equal("of the user", await File.ReadAllTextAsync(bench.At("parquet", "notes.txt"), TestContext.Current.CancellationToken));
        Assert.True(IsWholeParquet(bench.At("parquet", "lines.parquet")));
        Assert.False(Directory.Exists(bench.At("parquet", ".unfinished")));
    }

    [Fact]
    public async Task A_data_set_and_an_export_whose_process_is_killed_are_there_whole_or_not_at_all()
    {
        const int Kills = 6;
        var file = _scratch.At("kept.db");
        Filled(file);
        SqliteConnection.ClearAllPools();
        var random = new Random(11);
        var (killed, absent, whole) = (0, 0, 0);
        for (var kill = 0; kill < Kills; kill++)
        {
            var folder = _scratch.At(string.Create(CultureInfo.InvariantCulture, $"run-{kill}"));
            Directory.CreateDirectory(folder);
            using var process = OtherProcess.Start(typeof(InterruptedExportTests), nameof(Write_as_a_process), file, folder);
            var begun = Path.Combine(folder, kill % 2 == 0 ? "set.unfinished" : "tables.unfinished");
            while (!Directory.Exists(begun) && !process.HasExited)
            {
                await Task.Delay(1, TestContext.Current.CancellationToken);
            }

            await Task.WhenAny(process.WaitForExitAsync(TestContext.Current.CancellationToken), Task.Delay(random.Next(0, 60), TestContext.Current.CancellationToken));
            killed += process.HasExited ? 0 : 1;
            process.Kill();
            await process.WaitForExitAsync(TestContext.Current.CancellationToken);

            var (set, tables) = (Path.Combine(folder, "set"), Path.Combine(folder, "tables"));
            absent += new[] { set, tables }.Count(name => !Directory.Exists(name));
            if (Directory.Exists(set))
            {
                whole++;
                AssertSound(set);
                Assert.Equal(Entered, Directory.GetFiles(Path.Combine(set, "data", "lines")).Length);
            }

            if (Directory.Exists(tables))
            {
                whole++;
                Assert.All(Directory.GetFiles(tables), name => Assert.True(IsWholeParquet(name), name));
            }
        }

        TestContext.Current.TestOutputHelper?.WriteLine(FormattableString.Invariant($"{killed} of {Kills} killed at work: {whole} folders whole, {absent} not there, none half"));
        Assert.True(killed > 0 && absent > 0, "No kill fell before the end.");
    }

    /// <summary>The process that is killed; nothing by itself.</summary>
    [Fact(Explicit = true)]
    public async Task Write_as_a_process()
    {
        if (OtherProcess.Told() is not var (file, folder))
        {
            return;
        }

        var catalogue = Cat.OpenExisting(file, TimeProvider.System);
        new DatasetFolder(catalogue, TimeProvider.System).Write(new DatasetRequest(Path.Combine(folder, "set"), null, 1), null, CancellationToken.None);
        await new ExchangeFolder(catalogue, TimeProvider.System).WriteAsync(new ExchangeRequest("parquet", null, Path.Combine(folder, "tables"), new Uri("https://brackhaven.example/"), null), TestContext.Current.CancellationToken);
    }

    private static Cat Filled(string file)
    {
        var catalogue = Cat.Open(file, TimeProvider.System);
        for (var number = 0; number < Entered; number++)
        {
            catalogue.Intake.Add(Entries.Of(string.Create(CultureInfo.InvariantCulture, $"{number}.jpg"), "Tobias Brockwell", key: string.Create(CultureInfo.InvariantCulture, $"tube {number}")), "tester");
        }

        return catalogue;
    }

    private static void AssertSound(string bag) =>
        Assert.Equal(0, ChildProcess.Output("/bin/sh", "-c", $"cd '{bag}' && sha256sum --check --strict --quiet manifest-sha256.txt && sha256sum --check --strict --quiet tagmanifest-sha256.txt").ExitCode);

    /// <summary>Says whether a file begins and ends as Parquet does: four letters, and after the footer, which is written last, the same again.</summary>
    private static bool IsWholeParquet(string file) => File.ReadAllBytes(file) is [(byte)'P', (byte)'A', (byte)'R', (byte)'1', .., (byte)'P', (byte)'A', (byte)'R', (byte)'1'];

    /// <summary>Stops in the middle of writing.</summary>
    private sealed class Stopper(CancellationTokenSource cancel) : IProgress<DatasetProgress>
    {
        public void Report(DatasetProgress value)
        {
            if (value.Step == DatasetStep.Writing && value.Done == Entered / 2)
            {
                cancel.Cancel();
            }
        }
    }
}

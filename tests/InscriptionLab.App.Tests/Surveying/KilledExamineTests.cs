using System;
using System.Diagnostics;
using System.IO;
using System.Linq;
using System.Text.Json.Nodes;
using System.Threading.Tasks;
using InscriptionLab.Cataloguing;
using Microsoft.Data.Sqlite;
using Xunit;
using Cat = InscriptionLab.Cataloguing.Catalogue;

namespace InscriptionLab.App.Tests.Surveying;

/// <summary><c>examine</c> as a process, killed by force: what lies in its folder, its JSON and its catalogue is whole, whenever the kill came.</summary>
public sealed class KilledExamineTests : IDisposable
{
    private const int Side = 400;
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public Task Nothing_half_written_is_left_by_a_few_kills() => KillAsync(4, 7);

    /// <summary>Takes minutes: by hand. The environment may ask for another number.</summary>
    [Fact(Explicit = true)]
    public Task Nothing_half_written_is_left_by_many_kills() => KillAsync(int.TryParse(Environment.GetEnvironmentVariable("INSCRIPTIONLAB_KILLS"), out var kills) ? kills : 100, 20261129);

    private async Task KillAsync(int kills, int seed)
    {
        ManyPhotos.Fill(_folder.File("photos"), 1, 0, Side);
        string[] examine = ["examine", _folder.File("photos/00000.jpg"), "--out", _folder.File("out"), "--json", _folder.File("out.jsonl"), "--catalogue", _folder.File("kept.db")];
        var clock = Stopwatch.StartNew();
        await ProgramProcess.RunAsync(examine);
        var unbroken = clock.Elapsed;
        var (json, record) = (File.ReadAllText(_folder.File("out.jsonl")), Facts(_folder.File("out/record.json")));
        var names = Directory.GetFiles(_folder.File("out")).Order(StringComparer.Ordinal).ToArray();
        Clear();

        var random = new Random(seed);
        var (whileWriting, ended, keptOnes) = (0, 0, 0);
        for (var kill = 0; kill < kills; kill++)
        {
            using var program = ProgramProcess.Start(null, examine);
            if (kill % 2 == 0)
            {
                await Task.Delay(random.NextDouble() * unbroken, TestContext.Current.CancellationToken);
            }
            else
            {
                // Half the kills wait for the folder, so that they fall while files are written.
                while (!Directory.Exists(_folder.File("out")) && !program.HasEnded)
                {
                    await Task.Delay(1, TestContext.Current.CancellationToken);
                }

                await Task.Delay(TimeSpan.FromMilliseconds(random.Next(0, 600)), TestContext.Current.CancellationToken);
            }

            ended += program.HasEnded ? 1 : 0;
            program.Kill();
            whileWriting += Directory.Exists(_folder.File("out")) && !File.Exists(_folder.File("out/examination.html")) ? 1 : 0;
            keptOnes += See(names, json, record);
            if (kill % 3 == 2)
            {
                Clear();
            }
        }

        await ProgramProcess.RunAsync(examine);
        TestContext.Current.TestOutputHelper?.WriteLine(FormattableString.Invariant($"{kills} kills, {whileWriting} while files were written, {ended} after the end; the catalogue held the examination after {keptOnes}; a run that nothing stops takes {unbroken.TotalSeconds:0.0} s"));
        Assert.Equal(1, See(names, json, record));
        Assert.Equal(names, Directory.GetFiles(_folder.File("out")).Where(file => !file.EndsWith(".unfinished", StringComparison.Ordinal)).Order(StringComparer.Ordinal));
    }

    /// <summary>Looks at everything that is there under its own name.</summary>
    /// <returns>How many examinations the catalogue holds.</returns>
    private int See(string[] names, string json, string record)
    {
        if (File.Exists(_folder.File("out.jsonl")))
        {
            Assert.Equal(json, File.ReadAllText(_folder.File("out.jsonl")));
        }

        foreach (var file in names.Where(File.Exists))
        {
            Assert.True(IsWhole(file, record), $"{file} is half written.");
        }

        if (!File.Exists(_folder.File("kept.db")))
        {
            return 0;
        }

        var catalogue = Cat.OpenExisting(_folder.File("kept.db"), TimeProvider.System);
        Assert.Empty(catalogue.Health.Check());
        return catalogue.Search.Find(new SearchQuery()).Length;
    }

    private static bool IsWhole(string file, string record) => Path.GetExtension(file) switch
    {
        ".json" => Facts(file) == record,
        ".html" => File.ReadAllText(file).TrimEnd().EndsWith("</html>", StringComparison.Ordinal),
        ".png" => File.ReadAllBytes(file).AsSpan()[^12..].SequenceEqual((ReadOnlySpan<byte>)[0, 0, 0, 0, (byte)'I', (byte)'E', (byte)'N', (byte)'D', 0xAE, 0x42, 0x60, 0x82]),
        _ => File.ReadAllBytes(file).AsSpan()[^2..].SequenceEqual((ReadOnlySpan<byte>)[0xFF, 0xD9]),
    };

    /// <summary>Gives what the record says, without the times.</summary>
    private static string Facts(string file)
    {
        var record = JsonNode.Parse(File.ReadAllText(file))!.AsObject();
        record.Remove("made");
        foreach (var photo in record["photos"]!.AsArray())
        {
            photo!.AsObject().Remove("seconds");
        }

        return record.ToJsonString();
    }

    private void Clear()
    {
        // A pooled connection would go on reading the catalogue that is taken away here.
        SqliteConnection.ClearAllPools();
        foreach (var entry in Directory.GetFileSystemEntries(_folder.Path).Where(entry => Path.GetFileName(entry) != "photos"))
        {
            if (Directory.Exists(entry))
            {
                Directory.Delete(entry, recursive: true);
            }
            else
            {
                File.Delete(entry);
            }
        }
    }
}

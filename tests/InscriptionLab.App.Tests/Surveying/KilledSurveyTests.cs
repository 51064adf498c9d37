using System;
using System.Collections.Generic;
using System.Diagnostics;
using System.IO;
using System.Linq;
using System.Text.Json;
using System.Threading.Tasks;
using InscriptionLab.Cataloguing;
using Xunit;
using Cat = InscriptionLab.Cataloguing.Catalogue;

namespace InscriptionLab.App.Tests.Surveying;

/// <summary>The program itself, killed by force in the middle of real examinations, beside a run that nothing stopped.</summary>
public sealed class KilledSurveyTests : IDisposable
{
    private const int Damaged = 2;

    /// <summary>Most photos that are waited for before a kill; every fourth kill comes before the first.</summary>
    private const int MostFinished = 2;

    /// <summary>Bytes that a photo's record has and neither the beginning of a photo nor a damaged file has in the journal.</summary>
    private const int LongLine = 600;

    private static readonly string[] Results = ["photos.csv", "objects.csv", "unusable.csv", "records.jsonl", "counts.json", "index.html"];

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public Task A_survey_killed_a_few_times_ends_as_one_that_was_not() => KillAndCompareAsync(14, 3, 400, 3);

    /// <summary>Takes minutes: by hand. The environment may ask for other numbers.</summary>
    [Fact(Explicit = true)]
    public Task A_survey_killed_many_times_at_random_ends_as_one_that_was_not() =>
        KillAndCompareAsync(Asked("INSCRIPTIONLAB_PHOTOS", 50), Asked("INSCRIPTIONLAB_KILLS", 20), Asked("INSCRIPTIONLAB_SIDE", 0) is > 0 and var side ? side : null, 20260301);

    private static int Asked(string name, int otherwise) => int.TryParse(Environment.GetEnvironmentVariable(name), out var count) ? count : otherwise;

    private async Task KillAndCompareAsync(int photos, int wanted, int? side, int seed)
    {
        ManyPhotos.Fill(_folder.File("photos"), photos, Damaged, side);
        var clock = Stopwatch.StartNew();
        await ProgramProcess.RunAsync("survey", _folder.File("photos"), "--out", _folder.File("whole"));
        var unbroken = clock.Elapsed;
        var onePhoto = unbroken / photos;

        var random = new Random(seed);
        string[] survey = ["survey", _folder.File("photos"), "--out", _folder.File("broken"), "--catalogue", _folder.File("kept.db")];
        var (kills, afterPhotos, whenDone) = (0, 0, 0);
        for (var before = 0; kills < wanted && before < photos + Damaged; kills++)
        {
            using var program = ProgramProcess.Start(null, survey);
            await WaitAsync(program, kills % 4 == 3 ? 0 : random.Next(1, MostFinished + 1), random, onePhoto);
            program.Kill();
            var done = Finished().Count;
            (before, afterPhotos) = (done, afterPhotos + (done > before && done < photos + Damaged ? 1 : 0));
            whenDone += done == photos + Damaged ? 1 : 0;
            Assert.Empty(Cat.OpenExisting(_folder.File("kept.db"), TimeProvider.System).Health.Check());
        }

        var doneBefore = Finished().Count;
        var begun = Lines().Count(entry => entry.TryGetProperty("begins", out _));
        var last = await ProgramProcess.RunAsync(survey);

        TestContext.Current.TestOutputHelper?.WriteLine(FormattableString.Invariant($"{photos + Damaged} files, {kills} kills, {afterPhotos} of them after photos of that run were done, {whenDone} when all were; {doneBefore} files done before the last run, {begun} photos begun until then; unbroken run {unbroken.TotalSeconds:0} s; last run: {last.Split('\n').First(line => line.Contains("examined now", StringComparison.Ordinal))}"));
        Assert.True(afterPhotos > kills / 2, "Most kills must fall where photos of that run are done already.");
        Assert.All(Results, name => Assert.Equal(File.ReadAllText(_folder.File("whole/" + name)), File.ReadAllText(_folder.File("broken/" + name))));
        Assert.Equal(Pictures("whole"), Pictures("broken"));
        var files = Finished();
        Assert.Equal(photos + Damaged, files.Count);
        Assert.Equal(files.Count, files.Distinct(StringComparer.Ordinal).Count());
        var catalogue = Cat.OpenExisting(_folder.File("kept.db"), TimeProvider.System);
        var kept = catalogue.Search.Find(new SearchQuery { Most = int.MaxValue });
        Assert.Equal(photos, kept.Length);
        Assert.Equal(photos, kept.Select(hit => hit.File).Distinct(StringComparer.Ordinal).Count());
        Assert.Equal(photos, catalogue.Desk.Steps(int.MaxValue).Count);
        Assert.Empty(catalogue.Health.Check());
    }

    /// <summary>Waits until a run has finished some photos and a random part of a photo more; for none, a random while from its start.</summary>
    private async Task WaitAsync(ProgramProcess program, int more, Random random, TimeSpan onePhoto)
    {
        var cancel = TestContext.Current.CancellationToken;
        if (more == 0)
        {
            await Task.Delay(TimeSpan.FromMilliseconds(random.Next(300, 3000)), cancel);
        }
        else
        {
            // The journal cannot be read while the survey holds it, but its length can: only the line of a photo that is done is so long.
            var length = Length();
            for (var finished = 0; finished < more && !program.HasEnded;)
            {
                await Task.Delay(5, cancel);
                var now = Length();
                finished += now - length > LongLine ? 1 : 0;
                length = now;
            }

            await Task.Delay(random.NextDouble() * onePhoto, cancel);
        }
    }

    private long Length() => new FileInfo(_folder.File("broken/journal.log")) is { Exists: true } journal ? journal.Length : 0;

    private string[] Pictures(string folder) => [.. Directory.GetFiles(_folder.File(folder + "/thumbnails"))
        .Where(file => !file.EndsWith(".unfinished", StringComparison.Ordinal))
        .Order(StringComparer.Ordinal)
        .Select(file => $"{Path.GetFileName(file)} {Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(File.ReadAllBytes(file)))}")];

    /// <summary>Gives the files that the journal calls done.</summary>
    private List<string> Finished() => [.. Lines().Where(entry => entry.TryGetProperty("file", out _)).Select(entry => entry.GetProperty("file").GetString()!)];

    /// <summary>Reads the whole lines of the journal.</summary>
    private List<JsonElement> Lines()
    {
        var journal = _folder.File("broken/journal.log");
        if (!File.Exists(journal))
        {
            return [];
        }

        var text = File.ReadAllText(journal);
        return [.. text[..(text.LastIndexOf('\n') + 1)].Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(line => JsonDocument.Parse(line[9..]).RootElement)];
    }
}

using System;
using System.Diagnostics;
using System.IO;
using System.Linq;
using System.Text.Json;
using System.Threading.Tasks;
using InscriptionLab.Cataloguing;
using Xunit;
using Cat = InscriptionLab.Cataloguing.Catalogue;

namespace InscriptionLab.App.Tests.Surveying;

/// <summary>The program itself, killed by force in the middle of real examinations. Takes minutes: by hand.</summary>
public sealed class KilledSurveyTests : IDisposable
{
    private const int Kills = 20;
    private const int Damaged = 2;
    private static readonly string[] Results = ["photos.csv", "objects.csv", "unusable.csv", "records.jsonl", "counts.json", "index.html"];

    private readonly TemporaryFolder _folder = new();

    /// <summary>Gets how many sound photos are surveyed; the environment may ask for more or fewer.</summary>
    private static int Photos => int.TryParse(Environment.GetEnvironmentVariable("INSCRIPTIONLAB_PHOTOS"), out var count) ? count : 50;

    public void Dispose() => _folder.Dispose();

    [Fact(Explicit = true)]
    public async Task A_survey_killed_twenty_times_at_random_ends_as_one_that_was_not()
    {
        ManyPhotos.Fill(_folder.File("photos"), Photos, Damaged);
        var clock = Stopwatch.StartNew();
        await ProgramProcess.RunAsync("survey", _folder.File("photos"), "--out", _folder.File("whole"));
        var unbroken = clock.Elapsed;

        // Kills fall evenly from just after the start to twice the time of one photo and its start, so that they hit start, examination and writing alike.
        var random = new Random(20260301);
        string[] survey = ["survey", _folder.File("photos"), "--out", _folder.File("broken"), "--catalogue", _folder.File("kept.db")];
        var (kills, whileWorking) = (0, 0);
        for (; kills < Kills; kills++)
        {
            using var program = ProgramProcess.Start(null, survey);
            await Task.Delay(TimeSpan.FromMilliseconds(random.Next(500, 500 + (int)(2.5 * unbroken.TotalMilliseconds / Kills))), TestContext.Current.CancellationToken);
            whileWorking += program.HasEnded ? 0 : 1;
            program.Kill();
        }

        var doneBefore = Finished();
        var last = await ProgramProcess.RunAsync(survey);

        TestContext.Current.TestOutputHelper?.WriteLine(FormattableString.Invariant($"{Photos + Damaged} files, {whileWorking} of {kills} kills while the program ran, {doneBefore} files done before the last run; unbroken run {unbroken.TotalSeconds:0} s; last run: {last.Split('\n').First(line => line.Contains("examined now", StringComparison.Ordinal))}"));
        Assert.All(Results, name => Assert.Equal(File.ReadAllText(_folder.File("whole/" + name)), File.ReadAllText(_folder.File("broken/" + name))));
        Assert.Equal(Photos + Damaged, Finished());
        var catalogue = Cat.OpenExisting(_folder.File("kept.db"), TimeProvider.System);
        var kept = catalogue.Search.Find(new SearchQuery { Most = int.MaxValue });
        Assert.Equal(Photos, kept.Length);
        Assert.Equal(Photos, kept.Select(hit => hit.File).Distinct(StringComparer.Ordinal).Count());
        Assert.Empty(catalogue.Health.Check());
    }

    /// <summary>Counts the files that the journal calls done, and sees that none is so twice.</summary>
    private int Finished()
    {
        var files = File.ReadLines(_folder.File("broken/journal.log"))
            .Where(line => line.Length > 9 && line.EndsWith('}'))
            .Select(line => JsonDocument.Parse(line[9..]).RootElement)
            .Where(entry => entry.TryGetProperty("file", out _))
            .Select(entry => entry.GetProperty("file").GetString())
            .ToList();
        Assert.Equal(files.Count, files.Distinct(StringComparer.Ordinal).Count());
        return files.Count;
    }
}

using System;
using System.Linq;
using System.Net;
using System.Net.Http;
using System.Net.Http.Json;
using System.Text.Json;
using System.Threading.Tasks;
using InscriptionLab.App.Demo;
using InscriptionLab.App.Examining;
using InscriptionLab.App.Measuring;
using InscriptionLab.App.Tests;
using InscriptionLab.Cataloguing;
using InscriptionLab.Comparison;
using InscriptionLab.Evidence;
using InscriptionLab.Findings;
using InscriptionLab.Gathering;
using InscriptionLab.Page.Bench;
using InscriptionLab.Page.Guarding;
using InscriptionLab.Photos;
using InscriptionLab.Readings;
using InscriptionLab.References;
using InscriptionLab.Strips;
using InscriptionLab.Vision.Cells;
using InscriptionLab.Vision.Photos;
using InscriptionLab.Vision.Relief;
using InscriptionLab.Vision.Rings;
using InscriptionLab.Vision.Strips;
using InscriptionLab.Vision.Turns;
using Microsoft.AspNetCore.Builder;
using Xunit;

namespace InscriptionLab.Page.Tests;

/// <summary>A page that is open on a free port, with the truth of the samples in place of finder and reader; compares for real.</summary>
public class OpenPage : IAsyncLifetime
{
    private WebApplication? _page;

    /// <summary>Gets the address, without a slash at the end.</summary>
    public Uri Address { get; private set; } = new("http://127.0.0.1");

    /// <summary>Gets who asks as our own page does.</summary>
    public HttpClient Client { get; } = new();

    /// <summary>Gets how many times each stage ran, by its name.</summary>
    internal StageCounts Counts { get; } = new();

    private static readonly Reading Unread = new("truth", [], []);

    internal static ServeRequest Request { get; } = new(IPAddress.Loopback, 0, [], null);

    /// <summary>Gives the catalogue of the page; none unless a test asks for one.</summary>
    internal virtual Catalogue? Shelf() => null;

    /// <summary>Gives how much lies on the bench at most; null for the usual.</summary>
    internal virtual BenchLimits? Limits() => null;

    public async ValueTask InitializeAsync()
    {
        _page = PageHost.Build(Request, new Workshop(Stages, DemoReferences.Load(), isDemonstration: true, TimeProvider.System) { Measurer = new Measurer(file => new PhotoReader(new PhotoLimits()).Read(file), new CellMeasurer(new CellMeasurerOptions()).Run) }, Limits(), Shelf());
        await _page.StartAsync();
        Address = new Uri(PageHost.AddressOf(_page));
        Client.BaseAddress = Address;
        var session = await Client.GetFromJsonAsync<JsonElement>("/api/session");
        Client.DefaultRequestHeaders.Add(SiteRule.TokenHeader, session.GetProperty("token").GetString());
    }

    public async ValueTask DisposeAsync()
    {
        Client.Dispose();
        if (_page is not null)
        {
            await _page.DisposeAsync();
        }

        GC.SuppressFinalize(this);
    }

    /// <summary>Lays one sample on the bench and waits until it is finished.</summary>
    internal async Task<JsonElement> Examined(string sample, string? name = null)
    {
        using var opened = await Client.PostAsJsonAsync("/api/pieces", new { name = sample });
        var id = (await opened.Content.ReadFromJsonAsync<JsonElement>()).GetProperty("id").GetString()!;
        using var photo = new ByteArrayContent(await System.IO.File.ReadAllBytesAsync(SampleImages.PathOf(sample)));
        using var sent = await Client.PostAsync(new Uri($"/api/pieces/{id}/photos?name={Uri.EscapeDataString(name ?? sample)}", UriKind.Relative), photo);
        sent.EnsureSuccessStatusCode();
        return await Settled(id);
    }

    /// <summary>Waits until nothing of a piece runs any more.</summary>
    internal async Task<JsonElement> Settled(string id)
    {
        for (var i = 0; i < 1200; i++)
        {
            var piece = await Client.GetFromJsonAsync<JsonElement>($"/api/pieces/{id}");
            if (!piece.GetProperty("together").GetProperty("working").GetBoolean() && piece.GetProperty("photos").EnumerateArray().All(photo => !photo.GetProperty("working").GetBoolean()))
            {
                return piece;
            }

            await Task.Delay(50);
        }

        throw new TimeoutException("The piece is not finished after a minute.");
    }

    private BenchStages Stages(ReferenceList list, string key)
    {
        var comparer = new Comparer(list);
        var any = TruthExaminations.Stages(SampleImages.RomanTransposed);
        var weigher = new EvidenceWeigher(list, new EvidenceOptions(), comparer);
        var examining = any with
        {
            Open = Counts.Counted("photo", any.Open),
            FindTubes = (photo, cancel) => Counts.Count("tube", () => TruthExaminations.Stages(TruthFor(photo)).FindTubes(photo, cancel)),
            Unroll = (photo, tube, cancel) => Counts.Count("strip", () => any.Unroll(photo, tube, cancel)),
            Read = (photo, strip, cancel) => Counts.Count("reading", () => strip is { Unrolled: true, Map: FlatStripMap } ? Unread : TruthExaminations.Stages(TruthFor(photo)).Read(photo, strip, cancel)),
            Compare = reading => Counts.Count("finding", () => comparer.Compare(reading)),
            Judge = Judge,
            Weigh = (reading, finding, seen) => Counts.Count("evidence", () => weigher.Weigh(reading, finding, seen)),
            UnrollRing = new RingUnroller().Run,
        };
        return new BenchStages(examining, (photo, strip, _, cancel) => TruthExaminations.Stages(photo.File).Read(photo, strip, cancel).Lines[0], key)
        {
            PixelsOf = new PhotoReader(new PhotoLimits()).PixelsOf,
            MarkRing = (photo, rim, opening) => new RingFinder().Run(photo, rim, opening),
            Together = (members, lamps, cancel) => Counts.Count("together", () => Together(examining, lamps).Examine(members, null, cancel)),
        };
    }

    /// <summary>A cell shows no tube and is measured, not read.</summary>
    private static string TruthFor(Photo photo) => photo.File == SampleImages.CellCheckerboard ? SampleImages.NoTube : photo.File;

    /// <summary>What reads photos together is the program's own; only the grooves, of which there is no truth, are not read.</summary>
    private static SetExaminer Together(ExaminingStages examining, Func<Photo, StatedLamp?> lamps)
    {
        var (turns, relief, options) = (new TurnSet(new TurnSetOptions()), new ReliefBuilder(new ReliefOptions(), new Unroller()), new GathererOptions());
        return new SetExaminer(
            examining,
            new SetStages(turns.Match, (photos, tubes, matches, cancel) => turns.Run(photos, tubes, matches, cancel), (photos, tube, lettering, cancel) => relief.Run(photos, tube, lettering, StatedLamp.Over(tube, photos, lamps), cancel), ReliefPictures.Grooves),
            new Gatherer(options),
            new PhotoSorter(options),
            new Stand(options));
    }

    /// <summary>Lays several samples on the bench as one piece and waits until they are read together.</summary>
    internal async Task<JsonElement> Joined(params string[] samples)
    {
        using var opened = await Client.PostAsJsonAsync("/api/pieces", new { name = samples[0] });
        var id = (await opened.Content.ReadFromJsonAsync<JsonElement>()).GetProperty("id").GetString()!;
        foreach (var sample in samples)
        {
            using var photo = new ByteArrayContent(await System.IO.File.ReadAllBytesAsync(SampleImages.PathOf(sample)));
            using var sent = await Client.PostAsync(new Uri($"/api/pieces/{id}/photos?name={sample}", UriKind.Relative), photo);
            sent.EnsureSuccessStatusCode();
        }

        return await Settled(id);
    }

    private static Finding Judge(ReadingComparison comparison)
    {
        var outcome = comparison.Reading.Lines.Length == 0 ? FindingOutcome.NothingRead
            : comparison.Nearest is [{ SpellingDifferences.Length: > 0 }, ..] ? FindingOutcome.Differs
            : FindingOutcome.Agrees;
        return new Finding(outcome, comparison.Nearest, ["Every letter was compared."], ["Whether a later hand cut it."], ["Move the lamp low to one side."]) { Leading = comparison.Nearest is [var first, ..] ? first : null };
    }
}

using System;
using System.Net;
using System.Net.Http;
using System.Net.Http.Json;
using System.Text.Json;
using System.Threading.Tasks;
using InscriptionLab.App.Demo;
using InscriptionLab.App.Tests;
using InscriptionLab.Cataloguing;
using InscriptionLab.Comparison;
using InscriptionLab.Findings;
using InscriptionLab.Page.Bench;
using InscriptionLab.Page.Guarding;
using InscriptionLab.References;
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

    internal static ServeRequest Request { get; } = new(IPAddress.Loopback, 0, [], null);

    /// <summary>Gives the catalogue of the page; none unless a test asks for one.</summary>
    internal virtual Catalogue? Shelf() => null;

    public async ValueTask InitializeAsync()
    {
        _page = PageHost.Build(Request, new Workshop(Stages, DemoReferences.Load(), isDemonstration: true, TimeProvider.System), catalogue: Shelf());
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
        for (var i = 0; i < 600; i++)
        {
            var piece = await Client.GetFromJsonAsync<JsonElement>($"/api/pieces/{id}");
            if (!piece.GetProperty("photos")[0].GetProperty("working").GetBoolean())
            {
                return piece;
            }

            await Task.Delay(50);
        }

        throw new TimeoutException("The piece is not finished after half a minute.");
    }

    private BenchStages Stages(ReferenceList list, string key)
    {
        var comparer = new Comparer(list);
        var any = TruthExaminations.Stages(SampleImages.RomanTransposed);
        return new BenchStages(
            any with
            {
                Open = Counts.Counted("photo", any.Open),
                FindTubes = (photo, cancel) => Counts.Count("tube", () => TruthExaminations.Stages(photo.File).FindTubes(photo, cancel)),
                Unroll = (photo, tube, cancel) => Counts.Count("strip", () => any.Unroll(photo, tube, cancel)),
                Read = (photo, strip, cancel) => Counts.Count("reading", () => TruthExaminations.Stages(photo.File).Read(photo, strip, cancel)),
                Compare = reading => Counts.Count("finding", () => comparer.Compare(reading)),
                Judge = Judge,
            },
            (photo, strip, _, cancel) => TruthExaminations.Stages(photo.File).Read(photo, strip, cancel).Lines[0],
            key);
    }

    private static Finding Judge(ReadingComparison comparison)
    {
        var outcome = comparison.Reading.Lines.Length == 0 ? FindingOutcome.NothingRead
            : comparison.Nearest is [{ SpellingDifferences.Length: > 0 }, ..] ? FindingOutcome.Differs
            : FindingOutcome.Agrees;
        return new Finding(outcome, comparison.Nearest, ["Every letter was compared."], ["Whether a later hand cut it."], ["Move the lamp low to one side."]);
    }
}

using System;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Net.Http;
using System.Net.Http.Json;
using System.Text.Json;
using System.Text.RegularExpressions;
using System.Threading.Tasks;
using InscriptionLab.App;
using InscriptionLab.App.Demo;
using InscriptionLab.App.Tests;
using InscriptionLab.Cataloguing;
using InscriptionLab.Page.Guarding;
using Microsoft.AspNetCore.Builder;
using Microsoft.Playwright;
using Xunit;

namespace InscriptionLab.Page.Tests.Browser;

/// <summary>Takes the pictures of the page that the README shows, of the samples as the program itself reads them. Explicit: it needs the models and writes into sample-images/pictures.</summary>
public sealed partial class GalleryTests(Chromium chromium) : IClassFixture<Chromium>, IAsyncLifetime
{
    private const int Quality = 82;
    /// <summary>How long the program's own models may take on a machine that is busy otherwise, in milliseconds.</summary>
    private const int Patience = 240_000;

    private const string Person = "A. Harbourer";

    private static readonly string[] Single = ["roman-three-lines.jpg", SampleImages.RomanTransposed, "italic.jpg", "sans.jpg", "roman-around.jpg", "blackletter.jpg", "mirrored.jpg"];
    private static readonly string[] Turned = [.. Enumerable.Range(0, 8).Select(turn => string.Create(CultureInfo.InvariantCulture, $"turns-{45 * turn:000}.jpg"))];

    /// <summary>Side and height of the lamps of the samples, from the positions of lamp and camera in their truth.</summary>
    private static readonly (string Side, string Height)[] Stood = [("11", "21"), ("186", "10"), ("275", "33"), ("56", "15")];

    private readonly Composition _composition = new();
    private readonly HttpClient _client = new();
    private WebApplication? _page;

    public async ValueTask InitializeAsync()
    {
        var catalogue = Catalogue.Open(Path.Combine(Directory.CreateTempSubdirectory("lab-gallery-").FullName, "brackhaven.db"), TimeProvider.System);
        _page = PageHost.Build(OpenPage.Request, new Workshop(_composition, DemoReferences.Load(), isDemonstration: true), catalogue: catalogue);
        await _page.StartAsync();
        _client.BaseAddress = new Uri(PageHost.AddressOf(_page));
        _client.DefaultRequestHeaders.Add(SiteRule.TokenHeader, (await _client.GetFromJsonAsync<JsonElement>("/api/session")).GetProperty("token").GetString());
    }

    public async ValueTask DisposeAsync()
    {
        _client.Dispose();
        _composition.Dispose();
        if (_page is not null)
        {
            await _page.DisposeAsync();
        }
    }

    [Fact(Explicit = true)]
    public async Task Takes_the_pictures_of_the_first_screen_and_of_the_lamps()
    {
        await using (var empty = await Opened("/#bench", ColorScheme.Light))
        {
            await Taken(empty, "bench-empty");
        }

        await Relit();
    }

    [Fact(Explicit = true)]
    public Task Takes_the_picture_of_measuring() => Measured();

    [Fact(Explicit = true)]
    public async Task Takes_the_pictures_of_the_bench_and_of_the_catalogue()
    {
        foreach (var sample in Single)
        {
            await Laid(true, sample);
        }

        var set = await Laid(false, Turned);
        await Answered(set, "tube_material", "brass");
        await Answered(set, "draws", "3");
        await Kept(set);
        var piece = await Laid(false, SampleImages.Script);
        await Answered(piece, "tube_material", "pasteboard");
        await Kept(piece);
        await Bench(piece);
        await Together(set);
        await Looked();
        await DataSet();
    }

    private async Task Bench(string piece)
    {
        foreach (var (name, scheme, width, height) in new[] { ("bench-dark", ColorScheme.Dark, 1280, 800), ("bench-light", ColorScheme.Light, 1280, 800), ("bench-tablet", ColorScheme.Light, 820, 1180) })
        {
            await using var window = await Opened($"/#bench/{piece}", scheme, width, height);
            await Assertions.Expect(window.Page.Locator(".outcome")).ToBeVisibleAsync();
            await Taken(window, name);
        }

        await using var seen = await Opened($"/#bench/{piece}", ColorScheme.Light);
        await Assertions.Expect(seen.Page.Locator(".outcome")).ToBeVisibleAsync();
        await seen.Page.Locator("[data-key='tab-construction']").ClickAsync();
        await Assertions.Expect(seen.Page.Locator(".question-row.answered")).ToHaveCountAsync(1);
        await Taken(seen, "construction-light");
        foreach (var (name, at) in new[] { ("list-light", "/#list"), ("help-light", "/#help") })
        {
            await using var window = await Opened(at, ColorScheme.Light);
            await Taken(window, name);
        }
    }

    private async Task Together(string set)
    {
        await using var window = await Opened($"/#bench/{set}");
        await window.Page.Locator("[data-key='together-0']").ClickAsync();
        await Assertions.Expect(window.Page.Locator(".outcome")).ToBeVisibleAsync();
        await Taken(window, "together-dark");
    }

    /// <summary>One view under four lamps, and the surface once a person stated where they stood.</summary>
    private async Task Relit()
    {
        var view = await Laid(false, [.. Enumerable.Range(1, Stood.Length).Select(i => string.Create(CultureInfo.InvariantCulture, $"raking-{i}.jpg"))]);
        await using var window = await Opened($"/#bench/{view}");
        await window.Page.Locator("[data-key='together-0']").ClickAsync();
        await Assertions.Expect(window.Page.Locator(".lamps fieldset")).ToHaveCountAsync(Stood.Length);
        for (var i = 0; i < Stood.Length; i++)
        {
            await window.Page.Locator($"[data-key='lamp-side-{i}']").FillAsync(Stood[i].Side);
            await window.Page.Locator($"[data-key='lamp-height-{i}']").FillAsync(Stood[i].Height);
        }

        await Taken(window, "lamps-dark");
        await window.Page.Locator("[data-key='lamps-take']").ClickAsync();
        await Assertions.Expect(window.Page.Locator("[data-key=relight]")).ToBeVisibleAsync(new LocatorAssertionsToBeVisibleOptions { Timeout = Patience });
        await window.Page.WaitForFunctionAsync("() => { const drawn = document.querySelector('.relight-picture'); return drawn.getContext('2d').getImageData(drawn.width / 2, drawn.height / 2, 1, 1).data[3] === 255; }");
        await Taken(window, "relight-dark");
    }

    private async Task Looked()
    {
        await using (var window = await Opened("/#catalogue"))
        {
            await window.Page.Locator(".virtual-row", new PageLocatorOptions { HasText = "script.jpg" }).First.ClickAsync();
            await window.Page.GetByText("Marks alike").First.ClickAsync();
            await Assertions.Expect(window.Page.Locator(".beside .mark-picture")).ToHaveCountAsync(2);
            await Taken(window, "catalogue-dark");
        }

        await using (var window = await Opened("/#catalogue", ColorScheme.Light, 820, 1180))
        {
            await window.Page.GetByText("Thumbnails").ClickAsync();
            await window.Page.Locator(".virtual-tile").First.ClickAsync();
            await Taken(window, "catalogue-tablet");
        }

        await using var kept = await Opened("/#catalogue", ColorScheme.Light);
        await kept.Page.Locator(".cat-seen summary").ClickAsync();
        await kept.Page.Locator("[data-key=cat-seen]").SelectOptionAsync("draws");
        await Assertions.Expect(kept.Page.Locator(".cat-list [role=status]")).ToHaveTextAsync($"{Turned.Length + 1} found");
        for (var i = 0; i < Turned.Length + 1 && await kept.Page.Locator("[data-key=kept-strip]").CountAsync() == 0; i++)
        {
            await kept.Page.Locator("[role=option]").Nth(i).ClickAsync();
            await Assertions.Expect(kept.Page.Locator(".cat-observed")).ToBeVisibleAsync();
        }

        await Taken(kept, "catalogue-kept-light");
        await kept.Page.GetByText("Overview").ClickAsync();
        await kept.Page.Locator("[data-key=cat-clear]").ClickAsync();
        await Taken(kept, "catalogue-overview-light");
    }

    private async Task Measured()
    {
        var cell = await Laid(false, SampleImages.CellCheckerboard);
        await using var window = await Opened($"/#bench/{cell}");
        await Assertions.Expect(window.Page.Locator(".outcome")).ToBeVisibleAsync();
        await window.Page.Locator("[data-key=tab-measure]").ClickAsync();
        await window.Page.Locator("[data-key=measure-kind]").SelectOptionAsync("checkerboard");
        await window.Page.Locator("[data-key=measure-size]").FillAsync("5");
        await window.Page.Locator("[data-key=measure-offset]").FillAsync("0");
        await window.Page.Locator("[data-key=measure-go]").ClickAsync();
        await Assertions.Expect(window.Page.Locator("[data-size='0']")).ToContainTextAsync("\u00b1", new LocatorAssertionsToContainTextOptions { Timeout = Patience });
        await Taken(window, "measure-dark");
    }

    private async Task DataSet()
    {
        await using var window = await Opened("/#catalogue", ColorScheme.Light);
        await Assertions.Expect(window.Page.Locator(".cat-list [role=status]")).ToContainTextAsync("found");
        await window.Page.Locator("[data-key=data-open]").ClickAsync();
        await window.Page.Locator("[data-key=data-licence]").FillAsync("CC BY 4.0");

        // So few objects may all fall into one part: the first number that fills all three is shown.
        for (var (seed, empty) = (1, 3); empty > 0 && seed < 30; seed++)
        {
            await window.Page.Locator("[data-key=data-seed]").FillAsync(seed.ToString(CultureInfo.InvariantCulture));
            await window.Page.Locator("[data-key=data-make]").ClickAsync();
            await window.Page.WaitForTimeoutAsync(500);
            await Assertions.Expect(window.Page.Locator("[data-key=data-take]")).ToBeVisibleAsync(new LocatorAssertionsToBeVisibleOptions { Timeout = Patience });
            empty = await window.Page.Locator(".data-parts tbody tr", new PageLocatorOptions { HasTextRegex = EmptyPart() }).CountAsync();
        }

        await Taken(window, "dataset-light");
    }

    private async Task<Window> Opened(string at, ColorScheme scheme = ColorScheme.Dark, int width = 1280, int height = 800)
    {
        var window = await chromium.Open(new Uri(_client.BaseAddress!, at), scheme, width, height);
        await window.Page.EvaluateAsync($"localStorage.setItem('inscriptionlab', JSON.stringify({{ person: '{Person}' }}))");
        await window.Page.ReloadAsync();
        await window.Page.WaitForSelectorAsync("html[data-ready=yes]");
        return window;
    }

    /// <summary>Lays samples on the bench as one piece and waits for the finding; keeps it where asked to, and takes it off the bench again.</summary>
    private async Task<string> Laid(bool keep, params string[] samples)
    {
        using var opened = await _client.PostAsJsonAsync("/api/pieces", new { name = Path.GetFileNameWithoutExtension(samples[0]) });
        var id = (await opened.Content.ReadFromJsonAsync<JsonElement>()).GetProperty("id").GetString()!;
        foreach (var sample in samples)
        {
            using var photo = new ByteArrayContent(await File.ReadAllBytesAsync(SampleImages.PathOf(sample)));
            using var sent = await _client.PostAsync(new Uri($"/api/pieces/{id}/photos?name={sample}", UriKind.Relative), photo);
            sent.EnsureSuccessStatusCode();
        }

        await Settled(id);
        if (keep)
        {
            await Kept(id);
            using var gone = await _client.DeleteAsync(new Uri($"/api/pieces/{id}", UriKind.Relative));
        }

        return id;
    }

    private async Task Settled(string id)
    {
        for (var i = 0; i < 6000; i++)
        {
            var piece = await _client.GetFromJsonAsync<JsonElement>($"/api/pieces/{id}");
            if (!piece.GetProperty("together").GetProperty("working").GetBoolean() && piece.GetProperty("photos").EnumerateArray().All(photo => !photo.GetProperty("working").GetBoolean()))
            {
                return;
            }

            await Task.Delay(100);
        }

        throw new TimeoutException(string.Create(CultureInfo.InvariantCulture, $"Piece {id} is not finished after ten minutes."));
    }

    private async Task Kept(string id)
    {
        using var kept = await _client.PostAsJsonAsync($"/api/catalogue/keep/{id}", new { person = Person, text = string.Empty, line = 0 });
        kept.EnsureSuccessStatusCode();
    }

    private async Task Answered(string id, string feature, string observation)
    {
        using var answer = await _client.PostAsJsonAsync($"/api/pieces/{id}/seen", new { person = Person, feature, observation });
        answer.EnsureSuccessStatusCode();
        await Settled(id);
    }

    private static async Task Taken(Window window, string name)
    {
        await window.Page.WaitForLoadStateAsync(LoadState.NetworkIdle, new PageWaitForLoadStateOptions { Timeout = 1500 }).ContinueWith(_ => { }, TaskScheduler.Default);
        await window.Page.WaitForTimeoutAsync(600);
        var folder = Environment.GetEnvironmentVariable("INSCRIPTIONLAB_PICTURES") ?? Path.Combine(Path.GetDirectoryName(SampleImages.PathOf(SampleImages.RomanTransposed))!, "pictures");
        await window.Page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(folder, $"page-{name}.jpg"), Type = ScreenshotType.Jpeg, Quality = Quality });
    }

    [GeneratedRegex(@"\D0\D*0\s*$")]
    private static partial Regex EmptyPart();
}

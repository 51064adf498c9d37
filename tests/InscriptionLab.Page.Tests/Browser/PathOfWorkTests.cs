using System;
using System.Linq;
using System.Net.Http.Json;
using System.Threading.Tasks;
using InscriptionLab.App.Tests;
using Microsoft.Playwright;
using Xunit;

namespace InscriptionLab.Page.Tests.Browser;

/// <summary>The whole path in a real browser: photos in, letters and finding out, corrections by hand.</summary>
public sealed class PathOfWorkTests(OpenPage page, Chromium chromium) : IClassFixture<OpenPage>, IClassFixture<Chromium>
{
    [Fact]
    public async Task A_photo_goes_in_and_letters_and_a_finding_come_out()
    {
        await using var window = await chromium.Open(page.Address);
        await window.IsAccessible();
        await window.Page.SetInputFilesAsync("input[type=file] >> nth=0", SampleImages.PathOf(SampleImages.RomanTransposed));

        await Assertions.Expect(window.Page.Locator(".outcome")).ToHaveTextAsync(new System.Text.RegularExpressions.Regex("Differs"));
        await Assertions.Expect(window.Page.Locator(".stages li.done")).ToHaveCountAsync(5);
        Assert.Equal("Kesselbarndt", await Read(window, 0));
        Assert.Equal(["a", "r"], await window.Page.Locator("[data-line='0'].differs .read").AllInnerTextsAsync());
        Assert.Contains("Kesselbrandt", await window.Page.Locator(".form >> nth=0").InnerTextAsync(), StringComparison.Ordinal);
        Assert.Equal("KesselbarndtMarlhaven".Length, await window.Page.Locator(".strip .mark.letter").CountAsync());
        await window.IsAccessible();
        window.ComplainedOfNothing();
    }

    [Fact]
    public async Task Everything_can_be_corrected_with_the_keyboard_only()
    {
        var piece = await page.Examined(SampleImages.RomanTransposed);
        await using var window = await chromium.Open(new Uri(page.Address, $"/#bench/{piece.GetProperty("id").GetString()}"), ColorScheme.Light);
        var keys = window.Page.Keyboard;
        await window.Page.Locator("[data-key='letter-0-0']").FocusAsync();

        // "barndt" to "brandt": the eighth and ninth letters.
        for (var i = 0; i < 7; i++)
        {
            await keys.PressAsync("ArrowRight");
        }

        await keys.PressAsync("r");
        await keys.PressAsync("Enter");
        await window.Page.Locator("#who").FillAsync("A. Harbourer");
        await keys.PressAsync("Enter");
        await Assertions.Expect(window.Page.Locator("[data-key='letter-0-7'].by-hand .read")).ToHaveTextAsync("r");
        await Assertions.Expect(window.Page.Locator("[data-key='letter-0-7'] .sure")).ToContainTextAsync("a");
        await Assertions.Expect(window.Page.Locator(".tape-line >> nth=0")).ToContainTextAsync("the program read: Kesselbarndt");
        await Assertions.Expect(window.Page.Locator("[data-key='letter-0-7']")).ToBeFocusedAsync();
        await Assertions.Expect(window.Page.Locator("[data-key='report-report.pdf']")).ToBeVisibleAsync();
        await keys.PressAsync("ArrowRight");
        await keys.PressAsync("a");
        await window.IsAccessible();
        await keys.PressAsync("Enter");

        await Assertions.Expect(window.Page.Locator(".outcome")).ToHaveTextAsync(new System.Text.RegularExpressions.Regex("Agrees"));
        await Assertions.Expect(window.Page.Locator(".hand li")).ToHaveCountAsync(2);
        Assert.Contains("A. Harbourer", await window.Page.Locator(".hand").InnerTextAsync(), StringComparison.Ordinal);

        await keys.PressAsync("Control+z");
        await Assertions.Expect(window.Page.Locator(".hand li")).ToHaveCountAsync(1);
        await keys.PressAsync("Control+Shift+Z");
        await Assertions.Expect(window.Page.Locator(".hand li")).ToHaveCountAsync(2);
        window.ComplainedOfNothing();
    }

    [Fact]
    public async Task What_is_being_typed_stays_when_news_of_the_piece_comes()
    {
        var piece = await page.Examined(SampleImages.RomanTransposed);
        var id = piece.GetProperty("id").GetString()!;
        await using var window = await chromium.Open(new Uri(page.Address, $"/#bench/{id}"));
        await window.Page.Locator("[data-key='letter-0-7']").FocusAsync();
        await window.Page.Keyboard.PressAsync("x");
        await window.Page.Keyboard.PressAsync("y");
        await window.Page.Keyboard.PressAsync("ArrowLeft");

        // Another window corrects another letter: this one is told, and builds its letters anew.
        var photo = piece.GetProperty("photos")[0];
        using var answer = await page.Client.PostAsJsonAsync($"/api/pieces/{id}/corrections", new { kind = "letter", line = "line1", letter = 0, was = "K", becomes = "H", basis = photo.GetProperty("lines")[0].GetProperty("basis").GetString(), person = "B. Harbourer", photo = photo.GetProperty("id").GetString() }, TestContext.Current.CancellationToken);
        answer.EnsureSuccessStatusCode();
        await Assertions.Expect(window.Page.Locator("[data-key='letter-0-0'].by-hand .read")).ToHaveTextAsync("H");

        var field = window.Page.Locator("[data-key='letter-text-0-7']");
        await Assertions.Expect(field).ToBeFocusedAsync();
        await Assertions.Expect(field).ToHaveValueAsync("xy");
        await window.Page.Keyboard.PressAsync("z");
        await Assertions.Expect(field).ToHaveValueAsync("xzy");
        window.ComplainedOfNothing();
    }

    [Fact]
    public async Task The_edges_of_the_tube_can_be_dragged()
    {
        var piece = await page.Examined(SampleImages.RomanThreeLines);
        await using var window = await chromium.Open(new Uri(page.Address, $"/#bench/{piece.GetProperty("id").GetString()}"));
        await window.Page.EvaluateAsync("localStorage.setItem('inscriptionlab', JSON.stringify({ person: 'A. Harbourer' }))");
        await window.Page.ReloadAsync();
        await window.Page.Locator("[data-key='edit-tube']").ClickAsync();
        await Assertions.Expect(window.Page.Locator("[data-handle='00'] .over")).ToBeVisibleAsync();
        var before = await HandleAt(window);

        await window.Page.Mouse.MoveAsync(before.X, before.Y);
        await window.Page.Mouse.DownAsync();
        await window.Page.Mouse.MoveAsync(before.X, before.Y + 6, new MouseMoveOptions { Steps = 4 });
        await window.Page.Mouse.UpAsync();
        var after = await HandleAt(window);
        await window.Page.Locator("[data-key='keep']").ClickAsync();

        await Assertions.Expect(window.Page.Locator(".stages li.by-hand >> nth=0")).ToContainTextAsync("Tube");
        await Assertions.Expect(window.Page.Locator(".hand li")).ToContainTextAsync("Edges of the tube");
        Assert.InRange(after.Y - before.Y, 5, 7);
        window.ComplainedOfNothing();
    }

    [Fact]
    public async Task A_ring_is_marked_with_the_keyboard_only()
    {
        var piece = await page.Examined(SampleImages.RomanThreeLines);
        await using var window = await chromium.Open(new Uri(page.Address, $"/#bench/{piece.GetProperty("id").GetString()}"));
        await window.Page.EvaluateAsync("localStorage.setItem('inscriptionlab', JSON.stringify({ person: 'A. Harbourer' }))");
        await window.Page.ReloadAsync();
        await window.Page.Locator("[data-key='edit-ring']").FocusAsync();
        await window.Page.Keyboard.PressAsync("Enter");
        await window.Page.Locator("[data-key='handle-opening']").FocusAsync();
        await window.Page.Keyboard.PressAsync("ArrowLeft");
        await Assertions.Expect(window.Page.Locator("[data-key='handle-opening']")).ToBeFocusedAsync();
        await window.IsAccessible();
        await window.Page.Locator("[data-key='keep']").FocusAsync();
        await window.Page.Keyboard.PressAsync("Enter");

        await Assertions.Expect(window.Page.Locator(".hand li")).ToContainTextAsync("Rim of the ring");
        await Assertions.Expect(window.Page.Locator(".picture.photo .mark.edge")).ToHaveCountAsync(2);
        window.ComplainedOfNothing();
    }

    [Fact]
    public async Task Markup_in_a_name_stays_text()
    {
        const string Name = "<img src=x onerror=document.title='struck'>\"'&lt;svg onload=1>.jpg";
        var piece = await page.Examined(SampleImages.RomanTransposed, SampleImages.RomanTransposed);
        var id = piece.GetProperty("id").GetString();
        using var photo = new System.Net.Http.StringContent("no picture");
        using var sent = await page.Client.PostAsync(new Uri($"/api/pieces/{id}/photos?name={Uri.EscapeDataString(Name)}", UriKind.Relative), photo, TestContext.Current.CancellationToken);
        await using var window = await chromium.Open(new Uri(page.Address, $"/#bench/{id}"));
        await window.Page.Locator("[data-key='photo-next']").ClickAsync();

        await Assertions.Expect(window.Page.Locator(".file-name")).ToContainTextAsync("<img src=x onerror=");
        await Assertions.Expect(window.Page.Locator(".panel")).ToContainTextAsync("cannot be used");
        Assert.Equal("InscriptionLab", await window.Page.TitleAsync());
        Assert.Equal(0, await window.Page.Locator("[onerror], [onload]").CountAsync());
        window.ComplainedOfNothing();
    }

    private static async Task<string> Read(Window window, int line) =>
        string.Concat((await window.Page.Locator($"[data-line='{line}'] .read").AllInnerTextsAsync()).Select(letter => letter == "\u2423" ? " " : letter));

    /// <summary>Gives where the first handle is drawn, after the next frame.</summary>
    private static async Task<(float X, float Y)> HandleAt(Window window)
    {
        var at = await window.Page.EvaluateAsync<float[]>("""
            () => new Promise(done => requestAnimationFrame(() => requestAnimationFrame(() => {
              const box = document.querySelector("[data-handle='00'] .over").getBoundingClientRect();
              done([box.x + box.width / 2, box.y + box.height / 2]);
            })))
            """);
        return (at[0], at[1]);
    }
}

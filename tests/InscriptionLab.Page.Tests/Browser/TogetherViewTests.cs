using System;
using System.Threading.Tasks;
using Microsoft.Playwright;
using Xunit;

namespace InscriptionLab.Page.Tests.Browser;

/// <summary>Photos looked at together: the joint reading beside the single ones, and a lamp that can be moved.</summary>
public sealed class TogetherViewTests(OpenPage page, Chromium chromium) : IClassFixture<OpenPage>, IClassFixture<Chromium>
{
    private const string MeanLevel = """
        () => {
          const canvas = document.querySelector(".relight-picture");
          const data = canvas.getContext("2d", { willReadFrequently: true }).getImageData(0, 0, canvas.width, canvas.height).data;
          let sum = 0;
          for (let i = 0; i < data.length; i += 4) sum += data[i];
          return sum / (data.length / 4);
        }
        """;

    /// <summary>Side and height of the lamps of the samples, from the positions of lamp and camera in their truth.</summary>
    private static readonly (string Side, string Height)[] Stood = [("11", "21"), ("186", "10"), ("275", "33"), ("56", "15")];

    [Fact]
    public async Task The_lamp_is_moved_over_a_surface_with_keys_only()
    {
        await using var window = await Opened();
        await window.IsAccessible();
        await window.Page.Locator("[data-key='together-0']").FocusAsync();
        await window.Page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(window.Page.Locator(".joint h2")).ToContainTextAsync("4 photos read together");
        await window.Page.WaitForFunctionAsync($"() => ({MeanLevel})() > 1");
        var before = await window.Page.EvaluateAsync<double>(MeanLevel);
        await window.Page.Locator("[data-key=relight]").FocusAsync();
        for (var i = 0; i < 10; i++)
        {
            await window.Page.Keyboard.PressAsync("ArrowUp");
        }

        await Assertions.Expect(window.Page.Locator("[data-key=relight-height]")).ToHaveValueAsync("55");
        await window.Page.WaitForFunctionAsync($"before => Math.abs(({MeanLevel})() - before) > 1", before);
        await window.IsAccessible();
        window.ComplainedOfNothing();
    }

    [Fact]
    public async Task Joint_letters_are_corrected_with_keys_only_and_undone()
    {
        await using var window = await Opened();
        await window.Page.EvaluateAsync("localStorage.setItem('inscriptionlab', JSON.stringify({ person: 'A. Harbourer' }))");
        await window.Page.ReloadAsync();
        await window.Page.Locator("[data-key='together-0']").ClickAsync();
        await window.Page.Locator("[data-key='letter-0-0']").FocusAsync();
        await window.Page.Keyboard.PressAsync("Z");
        await Assertions.Expect(window.Page.Locator(".letter-detail")).ToContainTextAsync("lies over the joint one");
        await window.IsAccessible();
        await window.Page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(window.Page.Locator(".cell.by-hand")).ToHaveCountAsync(1);
        await Assertions.Expect(window.Page.Locator(".hand li")).ToContainTextAsync("is read as Z");
        await Assertions.Expect(window.Page.Locator("[data-key='letter-0-0']")).ToBeFocusedAsync();
        await window.IsAccessible();
        await window.Page.Keyboard.PressAsync("Control+z");
        await Assertions.Expect(window.Page.Locator(".cell.by-hand")).ToHaveCountAsync(0);

        await window.Page.Locator("[data-key='joint-grooves']").ClickAsync();
        await Assertions.Expect(window.Page.Locator(".joint .viewer")).ToBeVisibleAsync();
        await window.Page.Locator("[data-key='photo-next']").ClickAsync();
        await Assertions.Expect(window.Page.Locator(".picture.photo .file-name")).ToHaveTextAsync("raking-1.jpg");
        window.ComplainedOfNothing();
    }

    [Fact]
    public async Task Lamps_stated_by_a_person_give_the_surface_anew_and_are_undone()
    {
        await using var window = await Opened();
        await window.Page.EvaluateAsync("localStorage.setItem('inscriptionlab', JSON.stringify({ person: 'A. Harbourer' }))");
        await window.Page.ReloadAsync();
        await window.Page.Locator("[data-key='together-0']").ClickAsync();
        await window.Page.Locator("[data-key='joint-lamps']").FocusAsync();
        await window.Page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(window.Page.Locator(".lamps fieldset")).ToHaveCountAsync(Stood.Length);
        await Assertions.Expect(window.Page.Locator(".panel")).ToContainTextAsync("the lamps as the shading of the tube tells them stood");
        await window.IsAccessible();
        var (tubes, together) = (page.Counts["tube"], page.Counts["together"]);
        for (var i = 0; i < Stood.Length; i++)
        {
            await window.Page.Locator($"[data-key='lamp-side-{i}']").FillAsync(Stood[i].Side);
            await window.Page.Locator($"[data-key='lamp-height-{i}']").FillAsync(Stood[i].Height);
        }

        await Assertions.Expect(window.Page.Locator(".lamps output").Nth(1)).ToHaveTextAsync("left");
        await window.Page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(window.Page.Locator(".hand li")).ToContainTextAsync("Where the lamps stood");
        await Assertions.Expect(window.Page.Locator("[data-key=relight]")).ToBeVisibleAsync(new LocatorAssertionsToBeVisibleOptions { Timeout = 60_000 });
        await window.Page.WaitForFunctionAsync($"() => ({MeanLevel})() > 1");
        await Assertions.Expect(window.Page.Locator(".panel")).ToContainTextAsync("stated by A. Harbourer: raking-1.jpg 11 degrees clockwise from right, 21 high");
        await Assertions.Expect(window.Page.Locator(".panel")).ToContainTextAsync("the lamps as stated stood");
        await window.IsAccessible();

        await window.Page.Locator("[data-key=undo]").ClickAsync();
        await Assertions.Expect(window.Page.Locator(".hand li")).ToHaveCountAsync(0);
        await Assertions.Expect(window.Page.Locator(".panel")).Not.ToContainTextAsync("stated by A. Harbourer", new LocatorAssertionsToContainTextOptions { Timeout = 60_000 });
        Assert.Equal((tubes, together + 1), (page.Counts["tube"], page.Counts["together"]));
        window.ComplainedOfNothing();
    }

    private async Task<Window> Opened()
    {
        var piece = await page.Joined("raking-1.jpg", "raking-2.jpg", "raking-3.jpg", "raking-4.jpg");
        var window = await chromium.Open(new Uri(page.Address, $"/#bench/{piece.GetProperty("id").GetString()}"));
        await Assertions.Expect(window.Page.Locator("[data-key='together-0']")).ToBeVisibleAsync();
        return window;
    }
}

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

    private async Task<Window> Opened()
    {
        var piece = await page.Joined("raking-1.jpg", "raking-2.jpg", "raking-3.jpg", "raking-4.jpg");
        var window = await chromium.Open(new Uri(page.Address, $"/#bench/{piece.GetProperty("id").GetString()}"));
        await Assertions.Expect(window.Page.Locator("[data-key='together-0']")).ToBeVisibleAsync();
        return window;
    }
}

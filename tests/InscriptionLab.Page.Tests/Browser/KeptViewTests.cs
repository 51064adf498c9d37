using System;
using System.Net.Http.Json;
using System.Threading.Tasks;
using Microsoft.Playwright;
using Xunit;

namespace InscriptionLab.Page.Tests.Browser;

/// <summary>What the catalogue keeps beside readings: what was seen on a piece, and the surface of photos read together.</summary>
public sealed class KeptViewTests(OpenCatalogue page, Chromium chromium) : IClassFixture<OpenCatalogue>, IClassFixture<Chromium>
{
    [Fact]
    public async Task What_was_seen_on_a_piece_narrows_the_search_and_its_surface_is_lit_from_the_catalogue()
    {
        var piece = await page.Joined("raking-1.jpg", "raking-2.jpg", "raking-3.jpg", "raking-4.jpg");
        var id = piece.GetProperty("id").GetString()!;
        using var seen = await page.Client.PostAsJsonAsync($"/api/pieces/{id}/seen", new { person = "A. Harbourer", feature = "tube_material", observation = "pasteboard" }, TestContext.Current.CancellationToken);
        await page.Settled(id);
        using var kept = await page.Client.PostAsJsonAsync($"/api/catalogue/keep/{id}", new { person = "A. Harbourer", text = "", line = 0 }, TestContext.Current.CancellationToken);

        await using var window = await chromium.Open(new Uri(page.Address, "/#catalogue"));
        await window.Page.Locator(".cat-seen summary").FocusAsync();
        await window.Page.Keyboard.PressAsync("Enter");
        await window.Page.Locator("[data-key=cat-seen]").SelectOptionAsync("tube_material");
        await window.Page.Locator("[data-key=cat-answer]").SelectOptionAsync("pasteboard");
        await window.Page.Locator("[data-key=cat-toYear]").FillAsync("1750");
        await window.Page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(window.Page.Locator(".cat-list [role=status]")).ToHaveTextAsync("5 found");
        await window.IsAccessible();

        for (var i = 0; i < 5 && await window.Page.Locator("[data-key=kept-relight]").CountAsync() == 0; i++)
        {
            await window.Page.Locator("[role=option]").Nth(i).ClickAsync();
            await Assertions.Expect(window.Page.Locator(".cat-observed")).ToContainTextAsync("1790 or earlier");
        }

        await window.Page.Locator("[data-key=relight]").FocusAsync();
        await window.Page.Keyboard.PressAsync("ArrowUp");
        await Assertions.Expect(window.Page.Locator("[data-key=relight-height]")).ToHaveValueAsync("28");
        await window.IsAccessible();
        await window.Page.Locator("[data-key=kept-grooves]").ClickAsync();
        await window.Page.WaitForFunctionAsync("() => document.querySelector('.cat-joint img')?.naturalWidth > 0");
        await window.IsAccessible();
        window.ComplainedOfNothing();
    }
}

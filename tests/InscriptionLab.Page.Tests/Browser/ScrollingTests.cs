using System;
using System.Text.Json;
using System.Threading.Tasks;
using Microsoft.Playwright;
using Xunit;

namespace InscriptionLab.Page.Tests.Browser;

/// <summary>Measures how smoothly ten thousand rows scroll. Explicit: filling the catalogue takes about a minute.</summary>
public sealed class ScrollingTests(ManyPieces page, Chromium chromium) : IClassFixture<ManyPieces>, IClassFixture<Chromium>
{
    private const string Scroll = """
        async () => {
          const list = document.querySelector(".virtual");
          const times = [];
          let last = await new Promise(requestAnimationFrame);
          for (let i = 0; i < 240; i++) {
            list.scrollTop += 160;
            const now = await new Promise(requestAnimationFrame);
            times.push(now - last);
            last = now;
          }
          times.sort((a, b) => a - b);
          return { median: times[120], p95: times[228], most: times[239], built: list.querySelectorAll("[role=option]").length };
        }
        """;

    [Fact(Explicit = true)]
    public async Task Ten_thousand_rows_scroll_smoothly()
    {
        await using var window = await chromium.Open(new Uri(page.Address, "/#catalogue"));
        await Assertions.Expect(window.Page.Locator(".cat-list [role=status]")).ToHaveTextAsync("10,000 found", new LocatorAssertionsToHaveTextOptions { Timeout = 20_000 });
        var measured = await window.Page.EvaluateAsync<JsonElement>(Scroll);
        TestContext.Current.TestOutputHelper?.WriteLine(measured.ToString());

        Assert.True(measured.GetProperty("built").GetInt32() < 100);
        Assert.True(measured.GetProperty("p95").GetDouble() < 34, measured.ToString());
    }
}

using System;
using System.IO;
using System.Threading.Tasks;
using InscriptionLab.App.Tests;
using Microsoft.Playwright;
using Xunit;

namespace InscriptionLab.Page.Tests.Browser;

/// <summary>Takes the pictures of the page that the README shows. Explicit: it writes into sample-images/pictures.</summary>
public sealed class GalleryTests(OpenCatalogue page, Chromium chromium) : IClassFixture<OpenCatalogue>, IClassFixture<Chromium>
{
    private const int Quality = 82;

    [Fact(Explicit = true)]
    public async Task Takes_the_pictures()
    {
        var piece = await page.Examined(SampleImages.RomanTransposed);
        var bench = $"/#bench/{piece.GetProperty("id").GetString()}";
        foreach (var (name, at, scheme, width, height) in new[]
        {
            ("bench-dark", bench, ColorScheme.Dark, 1280, 800),
            ("bench-light", bench, ColorScheme.Light, 1280, 800),
            ("bench-tablet", bench, ColorScheme.Light, 820, 1180),
            ("bench-empty", "/#bench", ColorScheme.Light, 1280, 800),
            ("catalogue-dark", "/#catalogue", ColorScheme.Dark, 1280, 800),
            ("catalogue-tablet", "/#catalogue", ColorScheme.Light, 820, 1180),
            ("list-light", "/#list", ColorScheme.Light, 1280, 800),
            ("help-light", "/#help", ColorScheme.Light, 1280, 800),
        })
        {
            await using var window = await chromium.Open(new Uri(page.Address, at), scheme, width, height);
            if (name == "catalogue-dark")
            {
                await window.Page.Locator("[role=option] >> nth=2").ClickAsync();
                await window.Page.GetByText("Marks alike").ClickAsync();
            }

            await Taken(window, name);
        }

        var cell = await page.Examined(SampleImages.CellCheckerboard);
        await using var measuring = await chromium.Open(new Uri(page.Address, $"/#bench/{cell.GetProperty("id").GetString()}"));
        await measuring.Page.Locator("[data-key=tab-measure]").ClickAsync();
        await measuring.Page.Locator("[data-key=measure-kind]").SelectOptionAsync("checkerboard");
        await measuring.Page.Locator("[data-key=measure-size]").FillAsync("5");
        await measuring.Page.Locator("[data-key=measure-go]").ClickAsync();
        await Assertions.Expect(measuring.Page.Locator("[data-size='0']")).ToContainTextAsync("\u00b1", new LocatorAssertionsToContainTextOptions { Timeout = 60_000 });
        await Taken(measuring, "measure-dark");

        var set = await page.Joined("raking-1.jpg", "raking-2.jpg", "raking-3.jpg", "raking-4.jpg");
        await using var together = await chromium.Open(new Uri(page.Address, $"/#bench/{set.GetProperty("id").GetString()}"));
        await together.Page.Locator("[data-key='together-0']").ClickAsync();
        await Taken(together, "together-dark");

        await using var seen = await chromium.Open(new Uri(page.Address, bench), ColorScheme.Light);
        await seen.Page.EvaluateAsync("localStorage.setItem('inscriptionlab', JSON.stringify({ person: 'A. Harbourer' }))");
        await seen.Page.ReloadAsync();
        await Assertions.Expect(seen.Page.Locator(".stages li.done")).ToHaveCountAsync(5);
        await seen.Page.Locator("[data-key='tab-construction']").ClickAsync();
        await seen.Page.Locator("[data-key='seen-draws']").SelectOptionAsync(new SelectOptionValue { Index = 1 });
        await seen.Page.Locator("[data-key='seen-screws']").SelectOptionAsync(new SelectOptionValue { Index = 1 });
        await Taken(seen, "construction-light");
    }

    private static async Task Taken(Window window, string name)
    {
        await window.Page.WaitForLoadStateAsync(LoadState.NetworkIdle, new PageWaitForLoadStateOptions { Timeout = 1500 }).ContinueWith(_ => { }, TaskScheduler.Default);
        await window.Page.WaitForTimeoutAsync(600);
        var folder = Path.Combine(Path.GetDirectoryName(SampleImages.PathOf(SampleImages.RomanTransposed))!, "pictures");
        await window.Page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(folder, $"page-{name}.jpg"), Type = ScreenshotType.Jpeg, Quality = Quality });
    }
}

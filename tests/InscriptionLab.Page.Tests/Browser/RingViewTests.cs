using System;
using System.Threading.Tasks;
using InscriptionLab.App;
using InscriptionLab.App.Demo;
using InscriptionLab.App.Tests;
using Microsoft.Playwright;
using Xunit;

namespace InscriptionLab.Page.Tests.Browser;

/// <summary>The name round the cell of a sample, its rim marked by hand, with the program's own stages.</summary>
public sealed class RingViewTests(Chromium chromium) : IClassFixture<Chromium>
{
    /// <summary>How long the program's own models may take over a photo on a machine that is busy with other tests, in milliseconds.</summary>
    private const int Patience = 240_000;

    [Fact]
    public async Task A_rim_marked_with_keys_only_is_laid_flat_and_its_lettering_read()
    {
        using var composition = new Composition();
        await using var page = PageHost.Build(OpenPage.Request, new Workshop(composition, DemoReferences.Load(), isDemonstration: true));
        await page.StartAsync(TestContext.Current.CancellationToken);
        await using var window = await chromium.Open(new Uri(PageHost.AddressOf(page)));
        await window.Page.EvaluateAsync("localStorage.setItem('inscriptionlab', JSON.stringify({ person: 'A. Harbourer' }))");
        await window.Page.ReloadAsync();
        await window.Page.WaitForSelectorAsync("html[data-ready=yes]");
        await window.Page.SetInputFilesAsync("input[type=file] >> nth=0", SampleImages.PathOf(SampleImages.CellCheckerboard));
        await Assertions.Expect(window.Page.Locator(".outcome")).ToBeVisibleAsync(new LocatorAssertionsToBeVisibleOptions { Timeout = Patience });

        await window.Page.Locator("[data-key=edit-ring]").FocusAsync();
        await window.Page.Keyboard.PressAsync("Enter");
        await window.Page.Locator("[data-handle=centre]").FocusAsync();
        await window.Page.Keyboard.PressAsync("Shift+ArrowRight");
        await window.IsAccessible();
        await window.Page.Locator("[data-key=keep]").FocusAsync();
        await window.Page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(window.Page.Locator(".hand li")).ToContainTextAsync("Rim of the ring");
        await Assertions.Expect(window.Page.Locator(".stages li.done, .stages li.by-hand")).ToHaveCountAsync(5, new LocatorAssertionsToHaveCountOptions { Timeout = Patience });
        await Assertions.Expect(window.Page.Locator(".leiden").First).ToHaveTextAsync(Assert.Single(SampleImages.TruthOf(SampleImages.CellCheckerboard).Lines), new LocatorAssertionsToHaveTextOptions { Timeout = Patience });
        window.ComplainedOfNothing();
    }
}

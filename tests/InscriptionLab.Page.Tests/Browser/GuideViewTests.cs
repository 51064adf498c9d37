using System;
using System.Threading.Tasks;
using InscriptionLab.App.Guides;
using Microsoft.Playwright;
using Xunit;

namespace InscriptionLab.Page.Tests.Browser;

public sealed class GuideViewTests(OpenPage page, Chromium chromium) : IClassFixture<OpenPage>, IClassFixture<Chromium>
{
    public static TheoryData<string> Names => [.. GuideShelf.Names];

    [Theory]
    [MemberData(nameof(Names))]
    public async Task Every_guide_is_shown_and_accessible_in_both_looks(string name)
    {
        foreach (var (scheme, width) in new[] { (ColorScheme.Dark, 1280), (ColorScheme.Light, 390) })
        {
            await using var window = await chromium.Open(new Uri(page.Address, $"/#help/{name}"), scheme, width, height: 900);
            await Assertions.Expect(window.Page.Locator("main h1")).ToHaveTextAsync(GuideShelf.Find(name)!.Title);
            await Assertions.Expect(window.Page.Locator(".guide-list [aria-current=page]")).ToHaveTextAsync(GuideShelf.Find(name)!.Title);
            await window.IsAccessible();
            Assert.True(await window.Page.EvaluateAsync<bool>("document.querySelector('main').scrollWidth <= document.querySelector('main').clientWidth"), $"{name} is wider than {width} pixels.");
            window.ComplainedOfNothing();
        }
    }

    [Fact]
    public async Task The_first_guide_is_on_photographing_and_each_of_its_drawings_stands_beside_its_words()
    {
        await using var window = await chromium.Open(new Uri(page.Address, "/#help"));
        await Assertions.Expect(window.Page.Locator("main h1")).ToHaveTextAsync(GuideShelf.Find("photographing")!.Title);
        await Assertions.Expect(window.Page.Locator(".guide .step .drawing")).ToHaveCountAsync(9);
        await Assertions.Expect(window.Page.Locator(".guide .step", new PageLocatorOptions { HasText = "10 to 30 degrees" })).ToHaveCountAsync(1);
    }

    [Fact]
    public async Task Guides_lead_to_each_other_and_to_the_keys()
    {
        await using var window = await chromium.Open(new Uri(page.Address, "/#help/findings"));
        await window.Page.Locator(".guide a[href='#help/method/from-a-comparison-to-the-weighing']").ClickAsync();
        await Assertions.Expect(window.Page.Locator("main h1")).ToHaveTextAsync(GuideShelf.Find("method")!.Title);
        await Assertions.Expect(window.Page.Locator("#from-a-comparison-to-the-weighing")).ToBeInViewportAsync();
        await window.Page.Locator("[data-key=guide-keys]").FocusAsync();
        await window.Page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(window.Page.Locator(".guide dl.keys dt")).ToHaveCountAsync(6);
        await window.IsAccessible();
        window.ComplainedOfNothing();
    }
}

using System;
using System.Threading.Tasks;
using InscriptionLab.App.Tests;
using Microsoft.Playwright;
using Xunit;

namespace InscriptionLab.Page.Tests.Browser;

/// <summary>The checklist of construction with the years beside it.</summary>
public sealed class ConstructionViewTests(OpenPage page, Chromium chromium) : IClassFixture<OpenPage>, IClassFixture<Chromium>
{
    [Fact]
    public async Task Questions_are_answered_with_the_keyboard_only_and_the_years_follow()
    {
        var piece = await page.Examined(SampleImages.RomanTransposed);
        await using var window = await chromium.Open(new Uri(page.Address, $"/#bench/{piece.GetProperty("id").GetString()}"), ColorScheme.Light);
        await window.Page.EvaluateAsync("localStorage.setItem('inscriptionlab', JSON.stringify({ person: 'A. Harbourer' }))");
        await window.Page.ReloadAsync();
        await window.Page.Locator("[data-key='tab-construction']").FocusAsync();
        await window.Page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(window.Page.Locator(".checklist h1")).ToBeVisibleAsync();
        await Assertions.Expect(window.Page.Locator(".construction .panel")).ToContainTextAsync("Nothing tells of years yet");
        await window.IsAccessible();

        await window.Page.Locator("[data-key='seen-tube_material']").FocusAsync();
        await window.Page.Locator("[data-key='seen-tube_material']").SelectOptionAsync("pasteboard");
        await Assertions.Expect(window.Page.Locator(".construction .years-list")).ToContainTextAsync("1790 or earlier");
        await Assertions.Expect(window.Page.Locator(".question-row.answered")).ToContainTextAsync("A. Harbourer");
        await Assertions.Expect(window.Page.Locator("[data-key='seen-tube_material']")).ToBeFocusedAsync();
        await window.IsAccessible();

        await window.Page.Keyboard.PressAsync("Control+z");
        await Assertions.Expect(window.Page.Locator(".construction .years-words")).ToHaveCountAsync(0);
        await Assertions.Expect(window.Page.Locator(".question-row.answered")).ToHaveCountAsync(0);
        window.ComplainedOfNothing();
    }

    [Fact]
    public async Task Without_a_piece_the_page_says_what_the_checklist_is_for()
    {
        await using var window = await chromium.Open(new Uri(page.Address, "/#construction"), ColorScheme.Dark, width: 820, height: 1180);

        await Assertions.Expect(window.Page.Locator(".construction h1")).ToContainTextAsync("No piece is on the bench");
        await window.IsAccessible();
        window.ComplainedOfNothing();
    }
}

using System;
using System.Threading.Tasks;
using Microsoft.Playwright;
using Xunit;

namespace InscriptionLab.Page.Tests.Browser;

public sealed class CatalogueViewTests(OpenCatalogue page, Chromium chromium) : IClassFixture<OpenCatalogue>, IClassFixture<Chromium>
{
    [Fact]
    public async Task The_catalogue_is_searched_looked_at_and_compared()
    {
        await using var window = await chromium.Open(new Uri(page.Address, "/#catalogue"));
        var rows = window.Page.Locator("[role=option]");
        await Assertions.Expect(window.Page.Locator(".cat-list [role=status]")).ToHaveTextAsync("60 found");
        await window.IsAccessible();
        await window.Page.Locator("[data-key=cat-words]").FillAsync("pellow");
        await Assertions.Expect(window.Page.Locator(".cat-list [role=status]")).ToHaveTextAsync("12 found");

        await window.Page.Locator(".virtual").FocusAsync();
        await window.Page.Keyboard.PressAsync("ArrowDown");
        await window.Page.Keyboard.PressAsync("ArrowDown");
        await window.Page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(rows.Nth(1)).ToHaveAttributeAsync("aria-selected", "true");
        await Assertions.Expect(window.Page.Locator(".panel h2")).ToHaveTextAsync("Pellowick");
        await window.Page.GetByText("Marks alike").ClickAsync();
        await Assertions.Expect(window.Page.Locator(".beside .mark-picture")).ToHaveCountAsync(2);
        await window.IsAccessible();

        await window.Page.GetByText("Thumbnails").ClickAsync();
        await Assertions.Expect(window.Page.Locator(".virtual-tile")).ToHaveCountAsync(12);
        await window.IsAccessible();
        await window.Page.GetByText("Overview").ClickAsync();
        await Assertions.Expect(window.Page.Locator(".chart")).ToHaveCountAsync(4);
        await window.IsAccessible();
        window.ComplainedOfNothing();
    }

    [Fact]
    public async Task A_data_set_of_what_was_found_is_made_and_taken_away_with_keys_only()
    {
        await using var window = await chromium.Open(new Uri(page.Address, "/#catalogue"), ColorScheme.Light);
        await window.Page.Locator("[data-key=cat-words]").FillAsync("pellow");
        await Assertions.Expect(window.Page.Locator(".cat-list [role=status]")).ToHaveTextAsync("12 found");
        await window.Page.Locator("[data-key=data-open]").FocusAsync();
        await window.Page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(window.Page.Locator("dialog.data")).ToContainTextAsync("12 examinations");
        await window.IsAccessible();

        await window.Page.Locator("[data-key=data-licence]").FocusAsync();
        await window.Page.Keyboard.TypeAsync("CC BY 4.0");
        await window.Page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(window.Page.Locator(".data-counts")).ToContainTextAsync("12");
        await Assertions.Expect(window.Page.Locator(".data-parts tbody tr")).ToHaveCountAsync(3);
        await window.IsAccessible();

        await window.Page.Locator("[data-key=data-take]").FocusAsync();
        var download = await window.Page.RunAndWaitForDownloadAsync(() => window.Page.Keyboard.PressAsync("Enter"));
        Assert.Equal("lettering.zip", download.SuggestedFilename);
        await window.Page.Keyboard.PressAsync("Escape");
        await Assertions.Expect(window.Page.Locator("dialog.data")).ToHaveCountAsync(0);
        await Assertions.Expect(window.Page.Locator("[data-key=data-open]")).ToBeFocusedAsync();
        window.ComplainedOfNothing();
    }

    [Fact]
    public async Task The_list_is_changed_and_checked()
    {
        await using var window = await chromium.Open(new Uri(page.Address, "/#list"), ColorScheme.Light);
        await Assertions.Expect(window.Page.Locator(".list-said")).ToContainTextAsync("forms");
        await window.IsAccessible();
        await window.Page.GetByText("New row").ClickAsync();
        await window.Page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Check", Exact = true }).ClickAsync();
        await Assertions.Expect(window.Page.Locator("#problem")).ToContainTextAsync("form");
        await window.Page.Locator("[data-key=field-form]").FillAsync("Quarrowden");
        await window.Page.Locator("[data-key=field-maker]").FillAsync("Quarrowden");
        await window.Page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Check", Exact = true }).ClickAsync();
        await Assertions.Expect(window.Page.Locator(".list-said")).ToContainTextAsync("can be used");
        await Assertions.Expect(window.Page.Locator("[data-key=row-0]")).ToHaveTextAsync("Quarrowden");
    }

    [Fact]
    public async Task Rows_are_walked_through_with_the_keyboard_and_nothing_is_cut_off_beside_the_chosen_one()
    {
        await using var window = await chromium.Open(new Uri(page.Address, "/#list"));
        await window.Page.Locator("[data-key=row-0]").FocusAsync();
        await window.Page.Keyboard.PressAsync("ArrowDown");
        await Assertions.Expect(window.Page.Locator("[data-key=row-1]")).ToBeFocusedAsync();
        await Assertions.Expect(window.Page.Locator("[data-key=field-form]")).ToHaveValueAsync(await window.Page.Locator("[data-key=row-1]").InnerTextAsync());
        await Assertions.Expect(window.Page.Locator(".list-row [data-key^=field-]")).ToHaveCountAsync(18);
        Assert.True(await window.Page.EvaluateAsync<bool>("[...document.querySelectorAll('.list-table, .list-row')].every(part => part.scrollWidth <= part.clientWidth)"));
        await window.Page.SetViewportSizeAsync(390, 800);
        Assert.True(await window.Page.EvaluateAsync<bool>("document.documentElement.scrollWidth <= document.documentElement.clientWidth"), "The page is wider than the window.");
        await Assertions.Expect(window.Page.Locator("[data-key=field-form]")).ToBeVisibleAsync();
        await window.IsAccessible();
    }
}

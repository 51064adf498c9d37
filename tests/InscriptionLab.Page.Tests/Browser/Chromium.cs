using System;
using System.IO;
using System.Threading.Tasks;
using Microsoft.Playwright;
using Xunit;

namespace InscriptionLab.Page.Tests.Browser;

/// <summary>A real browser, the system's own; started once for all tests that look at the page.</summary>
public sealed class Chromium : IAsyncLifetime
{
    private const string Program = "/usr/bin/chromium";

    private static readonly string[] Quiet = ["--no-sandbox", "--disable-dev-shm-usage", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"];

    private IPlaywright? _playwright;
    private IBrowser? _browser;

    public static bool IsThere => File.Exists(Program);

    public async ValueTask InitializeAsync()
    {
        if (IsThere)
        {
            Assertions.SetDefaultExpectTimeout(20_000);
            _playwright = await Playwright.CreateAsync();
            _browser = await _playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions { ExecutablePath = Program, Headless = true, Args = Quiet });
        }
    }

    public async ValueTask DisposeAsync()
    {
        if (_browser is not null)
        {
            await _browser.DisposeAsync();
        }

        _playwright?.Dispose();
    }

    /// <summary>Opens the page in a window of its own and waits until it is ready; whatever the page complains of fails the test at the end.</summary>
    internal async Task<Window> Open(Uri address, ColorScheme scheme = ColorScheme.Dark, int width = 1280, int height = 800)
    {
        Assert.SkipWhen(_browser is null, $"{Program} is not there: install the package chromium.");
        var context = await _browser.NewContextAsync(new BrowserNewContextOptions { ViewportSize = new ViewportSize { Width = width, Height = height }, ColorScheme = scheme, ReducedMotion = ReducedMotion.Reduce });
        context.SetDefaultTimeout(20_000);
        var window = new Window(context, await context.NewPageAsync());
        await window.Page.GotoAsync(address.ToString());
        await window.Page.WaitForSelectorAsync("html[data-ready=yes]");
        return window;
    }
}

using System;
using System.Net.Http;
using System.Threading.Tasks;
using Xunit;

namespace InscriptionLab.Page.Tests;

public sealed class EndingTests
{
    /// <summary>Far less than the half minute for which a server waits for answers that do not end.</summary>
    private static readonly TimeSpan AtOnce = TimeSpan.FromSeconds(10);

    [Fact]
    public async Task The_program_ends_at_once_though_somebody_has_the_page_open()
    {
        var page = new OpenPage();
        await page.InitializeAsync();
        using var somebody = new HttpClient { BaseAddress = page.Address };
        await using var news = await somebody.GetStreamAsync(new Uri("/api/events", UriKind.Relative), TestContext.Current.CancellationToken);

        await page.DisposeAsync().AsTask().WaitAsync(AtOnce, TestContext.Current.CancellationToken);
    }
}

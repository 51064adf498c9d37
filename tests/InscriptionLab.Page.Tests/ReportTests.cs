using System;
using System.Net;
using System.Threading.Tasks;
using InscriptionLab.App.Tests;
using Xunit;

namespace InscriptionLab.Page.Tests;

public sealed class ReportTests(OpenPage page) : IClassFixture<OpenPage>
{
    [Fact]
    public async Task A_piece_on_the_bench_has_its_reports()
    {
        var piece = await page.Examined(SampleImages.RomanTransposed);
        var id = piece.GetProperty("id").GetString();

        var pdf = await page.Client.GetByteArrayAsync(new Uri($"/api/pieces/{id}/report.pdf", UriKind.Relative), TestContext.Current.CancellationToken);
        var html = await page.Client.GetStringAsync(new Uri($"/api/pieces/{id}/report.html", UriKind.Relative), TestContext.Current.CancellationToken);
        var brief = await page.Client.GetByteArrayAsync(new Uri($"/api/pieces/{id}/short.pdf", UriKind.Relative), TestContext.Current.CancellationToken);

        Assert.Equal("%PDF-"u8.ToArray(), pdf[..5]);
        Assert.Equal("%PDF-"u8.ToArray(), brief[..5]);
        Assert.Contains("Kesselbarndt", html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_not_on_the_bench_has_none()
    {
        using var answer = await page.Client.GetAsync(new Uri("/api/pieces/none/report.pdf", UriKind.Relative), TestContext.Current.CancellationToken);

        Assert.Equal(HttpStatusCode.NotFound, answer.StatusCode);
    }
}

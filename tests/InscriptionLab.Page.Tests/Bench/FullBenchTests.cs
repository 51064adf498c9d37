using System;
using System.IO;
using System.Linq;
using System.Net;
using System.Net.Http;
using System.Net.Http.Json;
using System.Text.Json;
using System.Threading.Tasks;
using InscriptionLab.App.Tests;
using InscriptionLab.Page.Bench;
using Xunit;

namespace InscriptionLab.Page.Tests.Bench;

/// <summary>A bench with room for one photo: those that wait to be decoded fill it as well.</summary>
public sealed class FullBenchTests(FullBenchTests.SmallPage page) : IClassFixture<FullBenchTests.SmallPage>
{
    [Fact]
    public async Task Photos_dropped_together_are_refused_as_soon_as_what_they_declare_is_too_much()
    {
        using var opened = await page.Client.PostAsJsonAsync("/api/pieces", new { name = "tube" }, TestContext.Current.CancellationToken);
        var id = (await opened.Content.ReadFromJsonAsync<JsonElement>(TestContext.Current.CancellationToken)).GetProperty("id").GetString()!;
        var bytes = await File.ReadAllBytesAsync(SampleImages.PathOf(SampleImages.RomanTransposed), TestContext.Current.CancellationToken);

        var answers = await Task.WhenAll(Enumerable.Range(0, 6).Select(_ => Send(id, bytes)));

        Assert.Single(answers, answer => answer.Status == HttpStatusCode.OK);
        Assert.Equal(5, answers.Count(answer => answer.Status == HttpStatusCode.UnprocessableEntity && answer.Said.Contains("memory", StringComparison.Ordinal)));
        Assert.Equal(1, (await page.Settled(id)).GetProperty("photos").GetArrayLength());
    }

    private async Task<(HttpStatusCode Status, string Said)> Send(string piece, byte[] bytes)
    {
        using var photo = new ByteArrayContent(bytes);
        using var sent = await page.Client.PostAsync(new Uri($"/api/pieces/{piece}/photos?name={SampleImages.RomanTransposed}", UriKind.Relative), photo, TestContext.Current.CancellationToken);
        return (sent.StatusCode, await sent.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
    }

    /// <summary>A page whose bench has room for one photo and a half.</summary>
    public sealed class SmallPage : OpenPage
    {
        internal override BenchLimits Limits() => new() { Pixels = 1200 * 600 * 3 / 2 };
    }
}

using System;
using System.Linq;
using System.Net.Http;
using System.Net.Http.Json;
using System.Text.Json;
using System.Threading.Tasks;
using InscriptionLab.App.Tests;
using Xunit;

namespace InscriptionLab.Page.Tests;

public sealed class KeepingTests(OpenCatalogue page) : IClassFixture<OpenCatalogue>
{
    [Fact]
    public async Task A_piece_of_the_bench_is_kept_and_laid_out_again()
    {
        var piece = await page.Examined(SampleImages.RomanTransposed);
        using var kept = await Post($"/api/catalogue/keep/{piece.GetProperty("id").GetString()}", new { person = "A. Harbourer", text = "", line = 0 });
        var row = (await Get("/api/catalogue?pattern=Kesselbarndt*")).EnumerateArray().First(one => one.GetProperty("file").GetString()!.Contains("roman", StringComparison.Ordinal));
        using var laid = await Post("/api/catalogue/lay-out", new { person = "", text = row.GetProperty("object").GetString(), line = 0 });
        var again = await laid.Content.ReadFromJsonAsync<JsonElement>(TestContext.Current.CancellationToken);

        Assert.Equal(1, (await kept.Content.ReadFromJsonAsync<JsonElement>(TestContext.Current.CancellationToken)).GetProperty("added").GetInt32());
        Assert.DoesNotContain("..", row.GetProperty("file").GetString(), StringComparison.Ordinal);
        Assert.Equal(1, again.GetProperty("photos").GetArrayLength());
    }

    private Task<JsonElement> Get(string path) => page.Client.GetFromJsonAsync<JsonElement>(path, TestContext.Current.CancellationToken)!;

    private Task<HttpResponseMessage> Post(string path, object body) => page.Client.PostAsJsonAsync(path, body, TestContext.Current.CancellationToken);
}

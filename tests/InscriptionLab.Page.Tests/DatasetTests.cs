using System;
using System.Globalization;
using System.IO;
using System.IO.Compression;
using System.Linq;
using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using System.Threading.Tasks;
using Xunit;

namespace InscriptionLab.Page.Tests;

/// <summary>Data sets of what a search found.</summary>
public sealed class DatasetTests(OpenCatalogue page) : IClassFixture<OpenCatalogue>
{
    [Fact]
    public async Task A_search_becomes_one_file_with_what_it_found_and_no_path_of_this_machine()
    {
        var made = await Made("text=pellow", new { licence = "CC BY 4.0", seed = 3, threshold = 0.9 });
        var result = made.GetProperty("result");
        await using var stream = new MemoryStream(await page.Client.GetByteArrayAsync(new Uri("/api/dataset/lettering.zip", UriKind.Relative), TestContext.Current.CancellationToken));
        await using var zip = new ZipArchive(stream);
        using var reader = new StreamReader(zip.GetEntry("data/lines.csv")!.Open());
        var lines = (await reader.ReadToEndAsync(TestContext.Current.CancellationToken)).Trim().Split('\n').Skip(1).ToList();
        using var sheet = new StreamReader(zip.GetEntry("data/datasheet.md")!.Open());
        var words = await sheet.ReadToEndAsync(TestContext.Current.CancellationToken);

        Assert.Equal((12, 12, 12), (result.GetProperty("marks").GetInt32(), result.GetProperty("objects").GetInt32(), lines.Count));
        Assert.All(lines, line => Assert.Contains("Pellowick", line, StringComparison.Ordinal));
        Assert.Equal(12, result.GetProperty("parts").EnumerateArray().Sum(part => part.GetProperty("objects").GetInt32()));
        Assert.Contains("Licence: CC BY 4.0", words, StringComparison.Ordinal);
        Assert.Equal(stream.Length, made.GetProperty("bytes").GetInt64());
        Assert.DoesNotContain(Path.GetTempPath(), made.ToString() + words, StringComparison.Ordinal);
        Assert.NotNull(zip.GetEntry("manifest-sha256.txt"));
    }

    [Theory]
    [InlineData(1.5, "CC0", "from -1 to 1")]
    [InlineData(0.9, null, "longer than 200")]
    public async Task What_cannot_be_made_is_answered_with_a_sentence(double threshold, string? licence, string sentence)
    {
        using var answer = await Begin("text=pellow", new { licence = licence ?? new string('x', 201), seed = 1, threshold });

        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains(sentence, await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_search_that_finds_nothing_ends_in_a_sentence()
    {
        var made = await Made("text=nowhere", new { licence = "", seed = 1, threshold = 0.9 });

        Assert.Contains("no picture of a line", made.GetProperty("problem").GetString(), StringComparison.Ordinal);
        using var file = await page.Client.GetAsync(new Uri("/api/dataset/lettering.zip", UriKind.Relative), TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.NotFound, file.StatusCode);
    }

    private Task<System.Net.Http.HttpResponseMessage> Begin(string query, object asked) =>
        page.Client.PostAsJsonAsync($"/api/dataset?{query}", asked, TestContext.Current.CancellationToken);

    private async Task<JsonElement> Made(string query, object asked)
    {
        using var begun = await Begin(query, asked);
        begun.EnsureSuccessStatusCode();
        for (var i = 0; i < 600; i++)
        {
            var state = await page.Client.GetFromJsonAsync<JsonElement>("/api/dataset", TestContext.Current.CancellationToken);
            if (!state.GetProperty("working").GetBoolean())
            {
                return state;
            }

            await Task.Delay(50, TestContext.Current.CancellationToken);
        }

        throw new TimeoutException(string.Create(CultureInfo.InvariantCulture, $"The data set of {query} is not ready after half a minute."));
    }
}

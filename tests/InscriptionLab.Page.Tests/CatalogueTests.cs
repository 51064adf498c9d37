using System;
using System.Linq;
using System.Net;
using System.Net.Http;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json;
using System.Threading.Tasks;
using Xunit;

namespace InscriptionLab.Page.Tests;

public sealed class CatalogueTests(OpenCatalogue page) : IClassFixture<OpenCatalogue>
{
    [Theory]
    [InlineData("", 60)]
    [InlineData("text=kesselb", 24)]
    [InlineData("near=Pelowick&edits=1", 12)]
    [InlineData("pattern=S?ll*by", 12)]
    [InlineData("outcome=differs", 20)]
    [InlineData("maker=drenn", 15)]
    [InlineData("role=outer&fromMm=58.5", 1)]
    [InlineData("from=2025-12-01&before=2026-01-01", 5)]
    public async Task A_search_finds_what_it_asks_for(string query, int count) =>
        Assert.Equal(count, (await Get($"/api/catalogue?{query}")).GetArrayLength());

    [Theory]
    [InlineData("fromMm=wide")]
    [InlineData("from=yesterday")]
    [InlineData("near=ab&edits=5")]
    public async Task A_search_that_means_nothing_is_answered_with_a_sentence(string query)
    {
        using var answer = await page.Client.GetAsync(new Uri($"/api/catalogue?{query}", UriKind.Relative), TestContext.Current.CancellationToken);

        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
    }

    [Fact]
    public async Task Marks_alike_come_with_their_likeness()
    {
        var number = (await Get("/api/catalogue"))[0].GetProperty("number").GetInt64();
        var alike = await Get($"/api/catalogue/{number}/alike?line=0");

        Assert.True(alike.GetArrayLength() > 5);
        var values = alike.EnumerateArray().Select(row => row.GetProperty("alike").GetProperty("likeness").GetDouble()).ToList();
        Assert.Equal(values.OrderDescending(), values);
    }

    [Fact]
    public async Task Nobody_changes_anything_without_a_name()
    {
        using var answer = await Post("/api/catalogue/trash", new { person = " ", text = "piece 1", line = 0 });

        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
    }

    [Fact]
    public async Task The_trash_can_be_undone()
    {
        using var gone = await Post("/api/catalogue/trash", new { person = "A. Harbourer", text = "piece 7", line = 0 });
        var without = (await Get("/api/catalogue?object=piece%207")).GetArrayLength();
        using var undone = await Post("/api/catalogue/undo", new { });

        Assert.Equal(0, without);
        Assert.Equal(1, (await Get("/api/catalogue?object=piece%207")).GetArrayLength());
    }

    [Fact]
    public async Task A_list_with_a_fault_is_answered_with_the_fault_and_not_used()
    {
        var before = await Get("/api/list");
        using var body = new StringContent("form,maker,status\nSallowby,Sallowby,beloved\n", Encoding.UTF8, "text/csv");
        using var answer = await page.Client.PostAsync(new Uri("/api/list/use", UriKind.Relative), body, TestContext.Current.CancellationToken);

        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains("beloved", await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
        Assert.Equal(before.GetProperty("rows").GetArrayLength(), (await Get("/api/list")).GetProperty("rows").GetArrayLength());
    }

    [Fact]
    public async Task A_list_that_comes_back_from_the_page_has_lost_no_column()
    {
        var list = await Get("/api/list");
        var lines = list.GetProperty("rows").EnumerateArray().Prepend(list.GetProperty("columns")).Select(row => string.Join(',', row.EnumerateArray().Select(cell => $"\"{cell.GetString()!.Replace("\"", "\"\"", StringComparison.Ordinal)}\"")));
        using var body = new StringContent(string.Join('\n', lines), Encoding.UTF8, "text/csv");
        using var answer = await page.Client.PostAsync(new Uri("/api/list/check", UriKind.Relative), body, TestContext.Current.CancellationToken);
        var back = await answer.Content.ReadFromJsonAsync<JsonElement>(TestContext.Current.CancellationToken);

        Assert.Equal(18, list.GetProperty("columns").GetArrayLength());
        Assert.Equal(list.GetProperty("rows").GetRawText(), back.GetProperty("rows").GetRawText());
        Assert.Contains("name-over-place", list.GetProperty("rows").GetRawText(), StringComparison.Ordinal);
    }

    private Task<JsonElement> Get(string path) => page.Client.GetFromJsonAsync<JsonElement>(path, TestContext.Current.CancellationToken)!;

    private Task<HttpResponseMessage> Post(string path, object body) => page.Client.PostAsJsonAsync(path, body, TestContext.Current.CancellationToken);
}

using System;
using System.Linq;
using System.Net;
using System.Net.Http;
using System.Net.Http.Json;
using System.Text.Json;
using System.Threading.Tasks;
using InscriptionLab.App.Tests;
using Xunit;

namespace InscriptionLab.Page.Tests.Bench;

/// <summary>What a person sees on the piece itself feeds years and evidence, and nothing else runs again.</summary>
public sealed class ConstructionTests(OpenPage page) : IClassFixture<OpenPage>
{
    private const string Person = "A. Harbourer";

    [Fact]
    public async Task Every_question_of_the_checklist_is_asked_once()
    {
        var questions = (await page.Client.GetFromJsonAsync<JsonElement>("/api/checklist", TestContext.Current.CancellationToken)).EnumerateArray().ToList();
        var features = questions.Select(question => question.GetProperty("feature").GetString()).ToList();

        Assert.Equal(features.Distinct(), features);
        Assert.Superset(InscriptionLab.Evidence.ConstructionTable.Default.Features.ToHashSet(), features.ToHashSet()!);
        Assert.All(questions, question => Assert.NotEmpty(question.GetProperty("question").GetString()!));
    }

    [Fact]
    public async Task An_answer_moves_the_years_and_runs_only_the_weighing()
    {
        var piece = await page.Examined(SampleImages.RomanTransposed);
        var (before, reading, finding) = (Years(piece), page.Counts["reading"], page.Counts["finding"]);

        var answered = await Answer(piece, "tube_material", "pasteboard");
        var years = Years(answered);
        var seen = answered.GetProperty("seen")[0];

        // The checklist: pasteboard tubes until 1790; a statement of that interval stands among those that tell of years.
        Assert.Contains(years.GetProperty("statements").EnumerateArray(), one => one.GetProperty("to").ValueKind == JsonValueKind.Number && one.GetProperty("to").GetInt32() == 1790);
        Assert.NotEqual(before.ToString(), years.ToString());
        Assert.Equal((Person, "pasteboard"), (seen.GetProperty("person").GetString(), seen.GetProperty("observation").GetString()));
        Assert.Equal((reading, finding), (page.Counts["reading"], page.Counts["finding"]));
    }

    [Fact]
    public async Task An_answer_is_undone_changed_and_left_open_again()
    {
        var piece = await page.Examined(SampleImages.RomanTransposed);
        await Answer(piece, "tube_material", "brass");
        var changed = await Answer(piece, "tube_material", "solid-wood");
        using var back = await page.Client.PostAsync(new Uri($"/api/pieces/{Id(piece)}/undo", UriKind.Relative), null, TestContext.Current.CancellationToken);
        var undone = await page.Settled(Id(piece));
        var open = await Answer(piece, "tube_material", "");

        Assert.Equal("solid-wood", Assert.Single(changed.GetProperty("seen").EnumerateArray()).GetProperty("observation").GetString());
        Assert.Equal("brass", Assert.Single(undone.GetProperty("seen").EnumerateArray()).GetProperty("observation").GetString());
        Assert.Empty(open.GetProperty("seen").EnumerateArray());
        Assert.Equal(2, open.GetProperty("corrections").GetArrayLength());
    }

    [Fact]
    public async Task Measured_values_and_odds_are_taken_too()
    {
        var piece = await page.Examined(SampleImages.RomanTransposed);
        await Answer(piece, "outer_mm", "40.5");
        await Answer(piece, "tube_material", "brass");
        var answered = await Answer(piece, "odds", "3/17");
        var html = await page.Client.GetStringAsync(new Uri($"/api/pieces/{Id(piece)}/report.html", UriKind.Relative), TestContext.Current.CancellationToken);

        Assert.Contains(Evidence(answered).GetProperty("sentences").EnumerateArray(), sentence => sentence.GetString()!.Contains("For the odds beforehand that you gave, 3/17", StringComparison.Ordinal));
        Assert.Contains("40.5 (A. Harbourer", html, StringComparison.Ordinal);
        Assert.Contains("Years that words and parts tell of", html, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("tube_material", "gold")]
    [InlineData("colour", "brass")]
    [InlineData("outer_mm", "wide")]
    [InlineData("outer_mm", "-3")]
    [InlineData("odds", "always")]
    [InlineData("signature_position", "a\u0000b")]
    public async Task An_answer_that_the_checklist_does_not_have_is_refused_with_a_sentence(string feature, string observation)
    {
        var piece = await page.Examined(SampleImages.RomanTransposed);
        using var answer = await Post(piece, feature, observation, Person);

        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Equal(0, (await page.Settled(Id(piece))).GetProperty("corrections").GetArrayLength());
    }

    [Fact]
    public async Task Nobody_answers_without_a_name()
    {
        var piece = await page.Examined(SampleImages.RomanTransposed);
        using var answer = await Post(piece, "tube_material", "brass", " ");

        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
    }

    private static string Id(JsonElement piece) => piece.GetProperty("id").GetString()!;

    private static JsonElement Evidence(JsonElement piece) => piece.GetProperty("photos")[0].GetProperty("finding").GetProperty("evidence");

    private static JsonElement Years(JsonElement piece) => Evidence(piece).GetProperty("years");

    private Task<HttpResponseMessage> Post(JsonElement piece, string feature, string observation, string person) =>
        page.Client.PostAsJsonAsync($"/api/pieces/{Id(piece)}/seen", new { person, feature, observation });

    private async Task<JsonElement> Answer(JsonElement piece, string feature, string observation)
    {
        using var answer = await Post(piece, feature, observation, Person);
        Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync());
        return await page.Settled(Id(piece));
    }
}

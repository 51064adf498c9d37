using System;
using System.Linq;
using System.Net.Http.Json;
using System.Text.Json;
using System.Threading.Tasks;
using InscriptionLab.App.Tests;
using Xunit;

namespace InscriptionLab.Page.Tests.Bench;

/// <summary>What a person corrects runs again what depends on it, and nothing else.</summary>
public sealed class CorrectionTests(OpenPage page) : IClassFixture<OpenPage>
{
    private const string Person = "A. Harbourer";

    [Fact]
    public async Task A_corrected_letter_runs_only_the_finding_and_is_the_persons()
    {
        var piece = await page.Examined(SampleImages.RomanTransposed);
        var line = Photo(piece).GetProperty("lines")[0];
        var (reading, finding) = (page.Counts["reading"], page.Counts["finding"]);

        // The sample has "Kesselbarndt" for Kesselbrandt: the person reads r where the stages say a.
        var at = line.GetProperty("text").GetString()!.IndexOf("ar", StringComparison.Ordinal);
        var after = await Correct(piece, new { kind = "letter", line = "line1", letter = at, was = "a", becomes = "r", basis = Basis(line), person = Person, photo = PhotoId(piece) });

        var letter = Photo(after).GetProperty("lines")[0].GetProperty("letters")[at];
        Assert.Equal("r", letter.GetProperty("text").GetString());
        Assert.Equal(Person, letter.GetProperty("by").GetProperty("person").GetString());
        Assert.StartsWith("a (", letter.GetProperty("by").GetProperty("was").GetString(), StringComparison.Ordinal);
        Assert.Equal(reading, page.Counts["reading"]);
        Assert.Equal(finding + 1, page.Counts["finding"]);
    }

    [Fact]
    public async Task Undo_brings_back_what_was_and_runs_nothing()
    {
        var piece = await page.Examined(SampleImages.RomanTransposed);
        var line = Photo(piece).GetProperty("lines")[0];
        await Correct(piece, new { kind = "letter", line = "line1", letter = 0, was = "K", becomes = "H", basis = Basis(line), person = Person, photo = PhotoId(piece) });
        var finding = page.Counts["finding"];

        var undone = await Step(piece, "undo");
        var redone = await Step(piece, "redo");

        Assert.Equal("K", Letter(undone, 0));
        Assert.Equal(0, undone.GetProperty("corrections").GetArrayLength());
        Assert.Equal("H", Letter(redone, 0));
        Assert.Equal(finding, page.Counts["finding"]);
    }

    [Fact]
    public async Task A_letter_can_be_split_and_taken_away()
    {
        var piece = await page.Examined(SampleImages.RomanTransposed);
        var line = Photo(piece).GetProperty("lines")[0];
        var letters = line.GetProperty("letters").GetArrayLength();

        var split = await Correct(piece, new { kind = "letter", line = "line1", letter = 1, was = "e", becomes = "rn", basis = Basis(line), person = Person, photo = PhotoId(piece) });
        var removed = await Correct(piece, new { kind = "letter", line = "line1", letter = 0, was = "K", becomes = "", basis = Basis(line), person = Person, photo = PhotoId(piece) });

        Assert.Equal(letters + 1, Photo(split).GetProperty("lines")[0].GetProperty("letters").GetArrayLength());
        Assert.StartsWith("rn", Photo(removed).GetProperty("lines")[0].GetProperty("text").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Moved_edges_run_everything_from_the_tube_on_and_set_letters_aside()
    {
        var piece = await page.Examined(SampleImages.RomanTransposed);
        var line = Photo(piece).GetProperty("lines")[0];
        await Correct(piece, new { kind = "letter", line = "line1", letter = 0, was = "K", becomes = "H", basis = Basis(line), person = Person, photo = PhotoId(piece) });
        var (photo, strip, reading) = (page.Counts["photo"], page.Counts["strip"], page.Counts["reading"]);

        var moved = await Correct(piece, new { kind = "tube", first = new[] { new[] { 0.0, -140 }, [1199, -165] }, second = new[] { new[] { 0.0, 1118 }, [1199, 1101] }, person = Person, photo = PhotoId(piece) });
        var back = await Step(piece, "undo");

        Assert.Equal(Person, Photo(moved).GetProperty("tube").GetProperty("by").GetProperty("person").GetString());
        Assert.Equal("K", Letter(moved, 0));
        Assert.True(moved.GetProperty("corrections")[0].GetProperty("setAside").GetBoolean());
        Assert.Equal("H", Letter(back, 0));
        Assert.Equal((photo, strip + 1, reading + 1), (page.Counts["photo"], page.Counts["strip"], page.Counts["reading"]));
    }

    [Fact]
    public async Task Edges_that_bound_no_tube_get_a_sentence_and_the_photo_is_searched_as_it_is()
    {
        var piece = await page.Examined(SampleImages.RomanTransposed);

        var moved = await Correct(piece, new { kind = "tube", first = new[] { new[] { 0.0, 10 }, [1100, 500] }, second = new[] { new[] { 0.0, 500 }, [1100, 10] }, person = Person, photo = PhotoId(piece) });

        Assert.Equal(JsonValueKind.Null, Photo(moved).GetProperty("tube").ValueKind);
        Assert.False(Photo(moved).GetProperty("strip").GetProperty("unrolled").GetBoolean());
        Assert.Contains(Photo(moved).GetProperty("warnings").EnumerateArray(), warning => warning.GetString()!.Contains("edge of the tube", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_drawn_line_is_read_and_a_removed_one_is_gone()
    {
        var piece = await page.Examined(SampleImages.RomanTransposed);
        var basis = Photo(piece).GetProperty("strip").GetProperty("key").GetString();

        var drawn = await Correct(piece, new { kind = "line", box = new[] { new[] { 100.0, 100 }, [400, 100], [400, 160], [100, 160] }, basis, person = Person, photo = PhotoId(piece) });
        var removed = await Correct(piece, new { kind = "line-removed", line = "line2", basis, person = Person, photo = PhotoId(piece) });

        Assert.Equal(3, Photo(drawn).GetProperty("lines").GetArrayLength());
        Assert.Equal(Person, Photo(drawn).GetProperty("lines")[2].GetProperty("by").GetProperty("person").GetString());
        Assert.Equal(["line1", "drawn1"], Photo(removed).GetProperty("lines").EnumerateArray().Select(line => line.GetProperty("id").GetString()!));
    }

    private static JsonElement Photo(JsonElement piece) => piece.GetProperty("photos")[0];

    private static string PhotoId(JsonElement piece) => Photo(piece).GetProperty("id").GetString()!;

    private static string Basis(JsonElement line) => line.GetProperty("basis").GetString()!;

    private static string Letter(JsonElement piece, int index) => Photo(piece).GetProperty("lines")[0].GetProperty("letters")[index].GetProperty("text").GetString()!;

    private async Task<JsonElement> Correct(JsonElement piece, object correction)
    {
        var id = piece.GetProperty("id").GetString()!;
        using var answer = await page.Client.PostAsJsonAsync($"/api/pieces/{id}/corrections", correction);
        Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync());
        return await page.Settled(id);
    }

    private async Task<JsonElement> Step(JsonElement piece, string step)
    {
        var id = piece.GetProperty("id").GetString()!;
        using var answer = await page.Client.PostAsync(new Uri($"/api/pieces/{id}/{step}", UriKind.Relative), null);
        return await page.Settled(id);
    }
}

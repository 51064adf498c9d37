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

    [Fact]
    public async Task What_the_program_read_stays_to_be_seen_however_often_it_is_corrected()
    {
        var piece = await page.Examined(SampleImages.RomanTransposed);
        var line = Photo(piece).GetProperty("lines")[0];
        await Correct(piece, new { kind = "letter", line = "line1", letter = 0, was = "K", becomes = "H", basis = Basis(line), person = Person, photo = PhotoId(piece) });
        var again = await Correct(piece, new { kind = "letter", line = "line1", letter = 0, was = "H", becomes = "R", basis = Basis(line), person = "B. Harbourer", photo = PhotoId(piece) });
        var letter = Photo(again).GetProperty("lines")[0].GetProperty("letters")[0];

        Assert.Equal("R", letter.GetProperty("text").GetString());
        Assert.Equal("B. Harbourer", letter.GetProperty("by").GetProperty("person").GetString());
        Assert.StartsWith("K (", letter.GetProperty("by").GetProperty("was").GetString(), StringComparison.Ordinal);
        Assert.Equal(line.GetProperty("text").GetString(), Photo(again).GetProperty("lines")[0].GetProperty("program").GetString());
        Assert.Equal(JsonValueKind.Null, Photo(again).GetProperty("lines")[1].GetProperty("program").ValueKind);
    }

    [Fact]
    public async Task Of_two_corrections_of_one_letter_at_once_one_counts_and_the_other_is_set_aside()
    {
        for (var round = 0; round < 10; round++)
        {
            var piece = await page.Examined(SampleImages.RomanTransposed);
            var line = Photo(piece).GetProperty("lines")[0];
            await Task.WhenAll(new[] { ("H", "A. Harbourer"), ("R", "B. Harbourer") }.Select(one => Send(piece, new { kind = "letter", line = "line1", letter = 0, was = "K", becomes = one.Item1, basis = Basis(line), person = one.Item2, photo = PhotoId(piece) })));
            var after = await page.Settled(piece.GetProperty("id").GetString()!);
            var corrections = after.GetProperty("corrections").EnumerateArray().ToList();

            Assert.Equal(2, corrections.Count);
            Assert.Equal([false, true], corrections.Select(one => one.GetProperty("setAside").GetBoolean()));
            Assert.Equal(corrections[0].GetProperty("becomes").GetString(), Letter(after, 0));
            Assert.Equal(corrections[0].GetProperty("person").GetString(), Photo(after).GetProperty("lines")[0].GetProperty("letters")[0].GetProperty("by").GetProperty("person").GetString());
        }
    }

    [Fact]
    public async Task A_letter_stays_itself_while_another_person_splits_one_before_it()
    {
        // "Kesselbarndt": the two s stand side by side; a place that shifts by one would hit the wrong one.
        var piece = await page.Examined(SampleImages.RomanTransposed);
        var line = Photo(piece).GetProperty("lines")[0];
        await Correct(piece, new { kind = "letter", line = "line1", letter = 1, was = "e", becomes = "ee", basis = Basis(line), person = Person, photo = PhotoId(piece) });
        var after = await Correct(piece, new { kind = "letter", line = "line1", letter = 3, was = "s", becomes = "f", basis = Basis(line), person = "B. Harbourer", photo = PhotoId(piece) });

        Assert.StartsWith("Keesfel", Photo(after).GetProperty("lines")[0].GetProperty("text").GetString(), StringComparison.Ordinal);
        var ids = Photo(after).GetProperty("lines")[0].GetProperty("letters").EnumerateArray().Select(letter => letter.GetProperty("id").GetInt32()).ToList();
        Assert.Equal(ids.Distinct(), ids);
    }

    [Fact]
    public async Task A_ring_drawn_by_hand_is_laid_flat_and_an_undone_one_brings_the_tube_back()
    {
        var piece = await page.Examined(SampleImages.RomanTransposed);
        var (photo, strip) = (page.Counts["photo"], page.Counts["strip"]);
        var drawn = await Correct(piece, new { kind = "ring", rim = new[] { 600.0, 450, 300, 420, 0 }, opening = 0.5, person = Person, photo = PhotoId(piece) });
        var back = await Step(piece, "undo");
        var ring = Photo(drawn).GetProperty("ring");

        Assert.Equal(Person, ring.GetProperty("by").GetProperty("person").GetString());
        Assert.Equal([600, 450, 420, 300, 90], ring.GetProperty("rim").EnumerateArray().Select(number => number.GetDouble()));
        Assert.Equal(0.5, ring.GetProperty("share").GetDouble(), 2);
        Assert.Equal(JsonValueKind.Null, Photo(drawn).GetProperty("tube").ValueKind);
        Assert.True(Photo(drawn).GetProperty("strip").GetProperty("unrolled").GetBoolean());
        Assert.Equal(JsonValueKind.Null, Photo(back).GetProperty("ring").ValueKind);
        Assert.Equal(JsonValueKind.Object, Photo(back).GetProperty("tube").ValueKind);
        Assert.Equal((photo, strip), (page.Counts["photo"], page.Counts["strip"]));
    }

    [Fact]
    public async Task Of_tube_and_ring_the_one_counts_that_was_drawn_last()
    {
        var piece = await page.Examined(SampleImages.RomanTransposed);
        await Correct(piece, new { kind = "ring", rim = new[] { 600.0, 450, 300, 300, 0 }, opening = 0.5, person = Person, photo = PhotoId(piece) });
        var moved = await Correct(piece, new { kind = "tube", first = new[] { new[] { 0.0, -140 }, [1199, -165] }, second = new[] { new[] { 0.0, 1118 }, [1199, 1101] }, person = Person, photo = PhotoId(piece) });

        Assert.Equal(JsonValueKind.Null, Photo(moved).GetProperty("ring").ValueKind);
        Assert.Equal(Person, Photo(moved).GetProperty("tube").GetProperty("by").GetProperty("person").GetString());
    }

    private static JsonElement Photo(JsonElement piece) => piece.GetProperty("photos")[0];

    private static string PhotoId(JsonElement piece) => Photo(piece).GetProperty("id").GetString()!;

    private static string Basis(JsonElement line) => line.GetProperty("basis").GetString()!;

    private static string Letter(JsonElement piece, int index) => Photo(piece).GetProperty("lines")[0].GetProperty("letters")[index].GetProperty("text").GetString()!;

    private async Task<JsonElement> Correct(JsonElement piece, object correction)
    {
        await Send(piece, correction);
        return await page.Settled(piece.GetProperty("id").GetString()!);
    }

    private async Task Send(JsonElement piece, object correction)
    {
        using var answer = await page.Client.PostAsJsonAsync($"/api/pieces/{piece.GetProperty("id").GetString()}/corrections", correction);
        Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync());
    }

    private async Task<JsonElement> Step(JsonElement piece, string step)
    {
        var id = piece.GetProperty("id").GetString()!;
        using var answer = await page.Client.PostAsync(new Uri($"/api/pieces/{id}/{step}", UriKind.Relative), null);
        return await page.Settled(id);
    }
}

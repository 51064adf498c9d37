using System;
using System.Linq;
using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using System.Threading.Tasks;
using Xunit;

namespace InscriptionLab.Page.Tests.Bench;

/// <summary>Photos of one piece are read together once each of them is finished.</summary>
public sealed class JointTests(OpenPage page) : IClassFixture<OpenPage>
{
    private static readonly string[] Lamps = ["raking-1.jpg", "raking-2.jpg", "raking-3.jpg", "raking-4.jpg"];

    [Fact]
    public async Task One_view_under_four_lamps_is_read_together_and_can_be_lit_anew()
    {
        var piece = await page.Joined(Lamps);
        var set = piece.GetProperty("together").GetProperty("sets")[0];
        var address = $"/api/pieces/{piece.GetProperty("id").GetString()}/sets/{set.GetProperty("id").GetString()}";
        var relight = await page.Client.GetByteArrayAsync(new Uri($"{address}/pictures/relight", UriKind.Relative), TestContext.Current.CancellationToken);
        var crop = await page.Client.GetByteArrayAsync(new Uri($"{address}/lines/0", UriKind.Relative), TestContext.Current.CancellationToken);
        using var nothing = await page.Client.GetAsync(new Uri($"{address}/pictures/secret", UriKind.Relative), TestContext.Current.CancellationToken);

        Assert.Equal("raking", set.GetProperty("kind").GetString());
        Assert.Equal(Lamps, set.GetProperty("photos").EnumerateArray().Select(name => name.GetString()));
        Assert.Equal(
            piece.GetProperty("photos")[0].GetProperty("lines").EnumerateArray().Select(line => line.GetProperty("text").GetString()),
            set.GetProperty("lines").EnumerateArray().Select(line => line.GetProperty("text").GetString()));
        Assert.Contains(set.GetProperty("pictures").EnumerateArray(), picture => picture.GetProperty("name").GetString() == "relight");
        Assert.Equal("PNG"u8.ToArray(), relight[1..4]);
        Assert.Equal("PNG"u8.ToArray(), crop[1..4]);
        Assert.Equal(HttpStatusCode.NotFound, nothing.StatusCode);
    }

    [Fact]
    public async Task A_corrected_letter_is_read_together_anew_and_an_undone_one_runs_nothing()
    {
        var piece = await page.Joined(Lamps[..2]);
        var id = piece.GetProperty("id").GetString();
        var (photo, set) = (piece.GetProperty("photos")[0], Set(piece));
        var line = photo.GetProperty("lines")[0];
        var together = page.Counts["together"];
        using var sent = await page.Client.PostAsJsonAsync($"/api/pieces/{id}/corrections", new { kind = "letter", line = "line1", letter = 0, was = line.GetProperty("letters")[0].GetProperty("text").GetString(), becomes = "Z", basis = line.GetProperty("basis").GetString(), person = "A. Harbourer", photo = photo.GetProperty("id").GetString() }, TestContext.Current.CancellationToken);
        var corrected = await page.Settled(id!);
        using var back = await page.Client.PostAsync(new Uri($"/api/pieces/{id}/undo", UriKind.Relative), null, TestContext.Current.CancellationToken);
        var undone = await page.Settled(id!);

        Assert.NotEqual(set, Set(corrected));
        Assert.Equal(set, Set(undone));
        Assert.Equal(together + 1, page.Counts["together"]);
    }

    [Fact]
    public async Task A_letter_of_the_joint_reading_is_read_by_a_person_and_the_photos_stay_as_they_were()
    {
        var piece = await page.Joined(Lamps[..2]);
        var id = piece.GetProperty("id").GetString()!;
        var set = piece.GetProperty("together").GetProperty("sets")[0];
        var (together, finding) = (page.Counts["together"], page.Counts["finding"]);
        await Correct(piece, "Z");
        var corrected = await page.Settled(id);
        var now = corrected.GetProperty("together").GetProperty("sets")[0];
        var letter = now.GetProperty("lines")[0].GetProperty("letters")[0];

        Assert.Equal(("Z", "A. Harbourer"), (letter.GetProperty("text").GetString(), letter.GetProperty("by").GetProperty("person").GetString()));
        Assert.Equal(set.GetProperty("lines")[0].GetProperty("text").GetString(), now.GetProperty("lines")[0].GetProperty("program").GetString());
        Assert.NotEqual(set.GetProperty("finding").GetProperty("nearest").ToString(), now.GetProperty("finding").GetProperty("nearest").ToString());
        Assert.Contains(now.GetProperty("reasons").EnumerateArray(), reason => reason.GetString()!.Contains("1 letter was read by a person (A. Harbourer)", StringComparison.Ordinal));
        Assert.Equal(piece.GetProperty("photos")[0].GetProperty("lines").ToString(), corrected.GetProperty("photos")[0].GetProperty("lines").ToString());
        Assert.Equal((together, finding + 1), (page.Counts["together"], page.Counts["finding"]));
        Assert.Equal(Set(piece), Set(corrected));

        var html = await page.Client.GetStringAsync(new Uri($"/api/pieces/{id}/report.html", UriKind.Relative), TestContext.Current.CancellationToken);
        Assert.Contains("A. Harbourer read Z where", html, StringComparison.Ordinal);
        Assert.Contains("The program read: ", html, StringComparison.Ordinal);

        using var back = await page.Client.PostAsync(new Uri($"/api/pieces/{id}/undo", UriKind.Relative), null, TestContext.Current.CancellationToken);
        var undone = (await page.Settled(id)).GetProperty("together").GetProperty("sets")[0];
        Assert.Equal(set.ToString(), undone.ToString());
        Assert.Equal(finding + 1, page.Counts["finding"]);
    }

    [Fact]
    public async Task A_letter_of_a_joint_reading_that_is_no_longer_there_is_set_aside_and_comes_back_with_it()
    {
        var piece = await page.Joined(Lamps[..2]);
        var id = piece.GetProperty("id").GetString()!;
        await Correct(piece, "Z");
        var photo = piece.GetProperty("photos")[0];
        var line = photo.GetProperty("lines")[0];
        using var sent = await page.Client.PostAsJsonAsync($"/api/pieces/{id}/corrections", new { kind = "letter", line = "line1", letter = 1, was = line.GetProperty("letters")[1].GetProperty("text").GetString(), becomes = "Y", basis = line.GetProperty("basis").GetString(), person = "B. Harbourer", photo = photo.GetProperty("id").GetString() }, TestContext.Current.CancellationToken);
        var changed = await page.Settled(id);
        using var back = await page.Client.PostAsync(new Uri($"/api/pieces/{id}/undo", UriKind.Relative), null, TestContext.Current.CancellationToken);
        var undone = await page.Settled(id);

        Assert.Equal([true, false], changed.GetProperty("corrections").EnumerateArray().Select(one => one.GetProperty("setAside").GetBoolean()));
        Assert.False(undone.GetProperty("corrections")[0].GetProperty("setAside").GetBoolean());
        Assert.Equal("Z", undone.GetProperty("together").GetProperty("sets")[0].GetProperty("lines")[0].GetProperty("letters")[0].GetProperty("text").GetString());
    }

    [Fact]
    public async Task Nothing_but_letters_is_corrected_in_a_joint_reading()
    {
        var piece = await page.Joined(Lamps[..2]);
        using var answer = await page.Client.PostAsJsonAsync($"/api/pieces/{piece.GetProperty("id").GetString()}/corrections", new { kind = "line-removed", line = "line1", person = "A. Harbourer", photo = piece.GetProperty("together").GetProperty("sets")[0].GetProperty("place").GetString() }, TestContext.Current.CancellationToken);

        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
    }

    [Fact]
    public async Task Lamps_that_cannot_stand_there_are_refused_and_nothing_is_recorded()
    {
        var piece = await page.Joined(Lamps[..2]);
        var id = piece.GetProperty("id").GetString()!;
        foreach (var lamps in new double[][][] { [[180, 20]], [[180, 20], [0, 90]], [[180, 20], [400, 20]], [[180, 20], [0]] })
        {
            using var answer = await page.Client.PostAsJsonAsync($"/api/pieces/{id}/corrections", new { kind = "lamps", lamps, person = "A. Harbourer", photo = piece.GetProperty("together").GetProperty("sets")[0].GetProperty("place").GetString() }, TestContext.Current.CancellationToken);
            Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        }

        Assert.Equal(0, (await page.Settled(id)).GetProperty("corrections").GetArrayLength());
    }

    [Fact]
    public async Task Photos_of_different_pieces_are_not_joined_and_one_alone_is_not_either()
    {
        var different = await page.Joined("roman-transposed.jpg", "script.jpg");
        var alone = await page.Joined("roman-transposed.jpg");

        Assert.Equal(0, different.GetProperty("together").GetProperty("sets").GetArrayLength());
        Assert.Equal(0, alone.GetProperty("together").GetProperty("sets").GetArrayLength());
    }

    [Fact]
    public async Task A_photo_taken_away_leaves_the_set()
    {
        var piece = await page.Joined(Lamps[..2]);
        var id = piece.GetProperty("id").GetString();
        using var gone = await page.Client.DeleteAsync(new Uri($"/api/pieces/{id}/photos/{piece.GetProperty("photos")[1].GetProperty("id").GetString()}", UriKind.Relative), TestContext.Current.CancellationToken);

        Assert.Equal(0, (await page.Settled(id!)).GetProperty("together").GetProperty("sets").GetArrayLength());
    }

    [Fact]
    public async Task The_report_says_what_the_photos_gave_together()
    {
        var piece = await page.Joined(Lamps[..2]);
        var html = await page.Client.GetStringAsync(new Uri($"/api/pieces/{piece.GetProperty("id").GetString()}/report.html", UriKind.Relative), TestContext.Current.CancellationToken);

        Assert.Contains("2 photos read together: one view under different lamps", html, StringComparison.Ordinal);
        Assert.Contains("raking-1.jpg, raking-2.jpg.", html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_report_says_who_said_where_the_lamps_stood()
    {
        var piece = await page.Joined(Lamps[..2]);
        var id = piece.GetProperty("id").GetString()!;
        using var said = await page.Client.PostAsJsonAsync($"/api/pieces/{id}/corrections", new { kind = "lamps", lamps = new double[][] { [180, 20], [0, 15] }, person = "A. Harbourer", photo = piece.GetProperty("together").GetProperty("sets")[0].GetProperty("place").GetString() }, TestContext.Current.CancellationToken);
        said.EnsureSuccessStatusCode();
        await page.Settled(id);
        var html = await page.Client.GetStringAsync(new Uri($"/api/pieces/{id}/report.html", UriKind.Relative), TestContext.Current.CancellationToken);

        Assert.Contains("A. Harbourer said where the lamps stood: 180:20, 0:15 (", html, StringComparison.Ordinal);
    }

    private async Task Correct(JsonElement piece, string becomes)
    {
        var set = piece.GetProperty("together").GetProperty("sets")[0];
        var line = set.GetProperty("lines")[0];
        using var sent = await page.Client.PostAsJsonAsync($"/api/pieces/{piece.GetProperty("id").GetString()}/corrections", new { kind = "letter", line = line.GetProperty("id").GetString(), letter = 0, was = line.GetProperty("letters")[0].GetProperty("text").GetString(), becomes, basis = line.GetProperty("basis").GetString(), person = "A. Harbourer", photo = set.GetProperty("place").GetString() }, TestContext.Current.CancellationToken);
        Assert.True(sent.IsSuccessStatusCode, await sent.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
    }

    private static string Set(JsonElement piece) => piece.GetProperty("together").GetProperty("sets")[0].GetProperty("id").GetString()!;
}

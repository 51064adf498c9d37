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

    private static string Set(JsonElement piece) => piece.GetProperty("together").GetProperty("sets")[0].GetProperty("id").GetString()!;
}

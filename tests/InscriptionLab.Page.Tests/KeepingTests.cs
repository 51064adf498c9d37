using System;
using System.IO;
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
    private const string Person = "A. Harbourer";

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

    [Fact]
    public async Task Answers_are_kept_with_the_object_found_by_and_given_back()
    {
        var piece = await page.Examined(SampleImages.Script);
        await Seen(piece, "tube_material", "pasteboard");
        await Seen(piece, "outer_mm", "38.2");
        await Seen(piece, "odds", "3/17");
        await Keep(piece);

        var row = Assert.Single((await Get("/api/catalogue?seen=tube_material&answer=pasteboard&toYear=1750")).EnumerateArray());
        var kept = await Get($"/api/catalogue/{row.GetProperty("number").GetInt64()}/object");
        Assert.Equal(["tube material: pasteboard", "outer, mm: 38.2"], kept.GetProperty("seen").EnumerateArray().Select(one => one.GetProperty("words").GetString()));
        Assert.Equal(("1790 or earlier", Person), (kept.GetProperty("seen")[0].GetProperty("years").GetString(), kept.GetProperty("seen")[0].GetProperty("person").GetString()));
        Assert.Equal(0, (await Get("/api/catalogue?fromYear=1800&toYear=1850")).GetArrayLength());

        using var laid = await Post("/api/catalogue/lay-out", new { person = "", text = row.GetProperty("object").GetString(), line = 0 });
        var again = await page.Settled((await laid.Content.ReadFromJsonAsync<JsonElement>(TestContext.Current.CancellationToken)).GetProperty("id").GetString()!);
        Assert.Equal(["pasteboard", "38.2"], again.GetProperty("seen").EnumerateArray().Select(one => one.GetProperty("observation").GetString()));
        Assert.Equal(Person, again.GetProperty("seen")[0].GetProperty("person").GetString());

        await Seen(again, "outer_mm", "");
        await Keep(again);
        var after = await Get($"/api/catalogue/{row.GetProperty("number").GetInt64()}/object");
        Assert.Equal("tube material: pasteboard", Assert.Single(after.GetProperty("seen").EnumerateArray()).GetProperty("words").GetString());
    }

    [Theory]
    [InlineData("fromYear=soon")]
    [InlineData("fromYear=1900&toYear=1800")]
    public async Task Years_that_mean_nothing_are_answered_with_a_sentence(string query)
    {
        using var answer = await page.Client.GetAsync(new Uri($"/api/catalogue?{query}", UriKind.Relative), TestContext.Current.CancellationToken);

        Assert.Equal(System.Net.HttpStatusCode.UnprocessableEntity, answer.StatusCode);
    }

    [Fact]
    public async Task Letters_read_by_a_person_are_kept_over_what_the_program_read_with_the_finding_that_follows()
    {
        var piece = await page.Examined("italic.jpg");
        var photo = piece.GetProperty("photos")[0];
        var line = photo.GetProperty("lines")[0];
        using var sent = await Post($"/api/pieces/{piece.GetProperty("id").GetString()}/corrections", new { kind = "letter", line = "line1", letter = 0, was = line.GetProperty("letters")[0].GetProperty("text").GetString(), becomes = "Q", basis = line.GetProperty("basis").GetString(), person = Person, photo = photo.GetProperty("id").GetString() });
        var corrected = await page.Settled(piece.GetProperty("id").GetString()!);
        var (read, program) = (corrected.GetProperty("photos")[0].GetProperty("lines")[0].GetProperty("text").GetString()!, line.GetProperty("text").GetString()!);
        await Keep(corrected);

        var row = (await Get($"/api/catalogue?text={Uri.EscapeDataString(read)}")).EnumerateArray().First(one => one.GetProperty("file").GetString()!.Contains("italic", StringComparison.Ordinal));
        var record = await Get($"/api/catalogue/{row.GetProperty("number").GetInt64()}");

        Assert.StartsWith(read, row.GetProperty("text").GetString(), StringComparison.Ordinal);
        Assert.Equal(program, record.GetProperty("lines")[0].GetProperty("text").GetString());
        Assert.Equal(corrected.GetProperty("photos")[0].GetProperty("finding").GetProperty("outcome").GetString(), row.GetProperty("outcome").GetString());
        Assert.Contains(record.GetProperty("warnings").EnumerateArray(), warning => warning.GetString()!.Contains($"read by a person ({Person})", StringComparison.Ordinal));
    }

    [Fact]
    public async Task The_surface_of_photos_read_together_is_kept_and_can_be_lit_anew()
    {
        var piece = await page.Joined("raking-1.jpg", "raking-2.jpg", "raking-3.jpg", "raking-4.jpg");
        await Keep(piece);
        var rows = (await Get($"/api/catalogue?object={piece.GetProperty("photos")[0].GetProperty("facts").GetProperty("sha256").GetString()}")).EnumerateArray().ToList();
        var pictures = new System.Collections.Generic.List<(string Address, JsonElement Size)>();
        foreach (var row in rows)
        {
            var address = $"/api/catalogue/{row.GetProperty("number").GetInt64()}";
            pictures.AddRange((await Get($"{address}/object")).GetProperty("pictures").EnumerateArray().Select(picture => ($"{address}/pictures/{picture.GetProperty("name").GetString()}", picture.GetProperty("size"))));
        }

        Assert.Equal(5, rows.Count);
        Assert.Equal(["relight", "grooves"], pictures.Select(picture => picture.Address.Split('/')[^1]));
        var relight = await page.Client.GetByteArrayAsync(new Uri(pictures[0].Address, UriKind.Relative), TestContext.Current.CancellationToken);
        Assert.Equal("PNG"u8.ToArray(), relight[1..4]);
        Assert.Equal(pictures[0].Size[0].GetInt32(), System.Buffers.Binary.BinaryPrimitives.ReadInt32BigEndian(relight.AsSpan(16)));
        Assert.True(pictures[0].Size[0].GetInt32() <= 1000 && relight.Length < 3_000_000);
        using var nothing = await page.Client.GetAsync(new Uri(pictures[0].Address.Replace("relight", "secret", StringComparison.Ordinal), UriKind.Relative), TestContext.Current.CancellationToken);
        Assert.Equal(System.Net.HttpStatusCode.NotFound, nothing.StatusCode);
    }

    [Fact]
    public async Task A_copy_that_was_cut_off_is_made_whole_when_the_piece_is_kept_again()
    {
        var piece = await page.Examined("sans.jpg");
        await Keep(piece);
        var sha256 = piece.GetProperty("photos")[0].GetProperty("facts").GetProperty("sha256").GetString()!;
        var file = Path.Combine(page.Name + "-photos", sha256[..16], "sans.jpg");
        var whole = await File.ReadAllBytesAsync(SampleImages.PathOf("sans.jpg"), TestContext.Current.CancellationToken);
        Assert.Equal(whole, await File.ReadAllBytesAsync(file, TestContext.Current.CancellationToken));
        await File.WriteAllBytesAsync(file, whole[..1000], TestContext.Current.CancellationToken);

        await Keep(piece);

        Assert.Equal(whole, await File.ReadAllBytesAsync(file, TestContext.Current.CancellationToken));
        Assert.Equal([file], Directory.GetFiles(Path.GetDirectoryName(file)!));
    }

    private async Task Keep(JsonElement piece)
    {
        using var kept = await Post($"/api/catalogue/keep/{piece.GetProperty("id").GetString()}", new { person = Person, text = "", line = 0 });
        Assert.True(kept.IsSuccessStatusCode, await kept.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
    }

    private async Task Seen(JsonElement piece, string feature, string observation)
    {
        var id = piece.GetProperty("id").GetString()!;
        using var answer = await Post($"/api/pieces/{id}/seen", new { person = Person, feature, observation });
        Assert.True(answer.IsSuccessStatusCode, await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
        await page.Settled(id);
    }

    private Task<JsonElement> Get(string path) => page.Client.GetFromJsonAsync<JsonElement>(path, TestContext.Current.CancellationToken)!;

    private Task<HttpResponseMessage> Post(string path, object body) => page.Client.PostAsJsonAsync(path, body, TestContext.Current.CancellationToken);
}

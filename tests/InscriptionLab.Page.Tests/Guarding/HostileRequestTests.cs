using System;
using System.IO;
using System.Linq;
using System.Net;
using System.Net.Http;
using System.Net.Http.Json;
using System.Net.Sockets;
using System.Text;
using System.Text.Json;
using System.Threading.Tasks;
using InscriptionLab.App.Tests;
using InscriptionLab.Page.Guarding;
using Xunit;

namespace InscriptionLab.Page.Tests.Guarding;

/// <summary>Requests that mean ill, or are only clumsy.</summary>
public sealed class HostileRequestTests(OpenPage page) : IClassFixture<OpenPage>
{
    [Theory]
    [InlineData("/../Directory.Build.props")]
    [InlineData("/..%2f..%2fDirectory.Build.props")]
    [InlineData("/%2e%2e/%2e%2e/etc/passwd")]
    [InlineData("/scripts/..%5c..%5c..%5cetc%5cpasswd")]
    [InlineData("/scripts//../../../etc/passwd")]
    [InlineData("//etc/passwd")]
    [InlineData("/etc/passwd")]
    [InlineData("/styles/base.css%00.html")]
    public async Task A_path_that_climbs_leads_nowhere(string path)
    {
        var answer = await Raw($"GET {path} HTTP/1.1\r\nHost: 127.0.0.1\r\nConnection: close\r\n\r\n");

        Assert.Matches("^HTTP/1.1 (400|404)", answer);
        Assert.DoesNotContain("root:", answer, StringComparison.Ordinal);
        Assert.DoesNotContain("<Project", answer, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("brackhaven.example")]
    [InlineData("127.0.0.1.brackhaven.example")]
    [InlineData("192.0.2.7")]
    [InlineData("localhost.brackhaven.example")]
    public async Task A_foreign_host_is_refused(string host)
    {
        var answer = await Raw($"GET /api/session HTTP/1.1\r\nHost: {host}\r\nConnection: close\r\n\r\n");

        Assert.StartsWith("HTTP/1.1 421", answer, StringComparison.Ordinal);
        Assert.DoesNotContain("token", answer, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_post_of_another_site_is_refused_even_with_the_token()
    {
        var token = page.Client.DefaultRequestHeaders.GetValues(SiteRule.TokenHeader).Single();
        foreach (var sign in new[] { "Sec-Fetch-Site: cross-site", "Sec-Fetch-Site: same-site", "Origin: http://brackhaven.example", "Origin: null" })
        {
            var answer = await Raw($"POST /api/pieces HTTP/1.1\r\nHost: 127.0.0.1\r\n{sign}\r\n{SiteRule.TokenHeader}: {token}\r\nContent-Type: application/json\r\nContent-Length: 13\r\nConnection: close\r\n\r\n{{\"name\":\"x\"}} ");

            Assert.StartsWith("HTTP/1.1 403", answer, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task A_post_without_the_token_is_refused()
    {
        using var stranger = new HttpClient { BaseAddress = page.Address };
        using var answer = await stranger.PostAsJsonAsync("/api/pieces", new { name = "x" }, TestContext.Current.CancellationToken);

        Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
    }

    [Theory]
    [InlineData("/api/session", "cors", "empty")]
    [InlineData("/api/pieces", "no-cors", "image")]
    [InlineData("/scripts/main.js", "no-cors", "script")]
    [InlineData("/", "navigate", "iframe")]
    public async Task Another_site_can_neither_read_nor_show_anything(string path, string mode, string destination)
    {
        var answer = await Raw($"GET {path} HTTP/1.1\r\nHost: 127.0.0.1\r\nSec-Fetch-Site: cross-site\r\nSec-Fetch-Mode: {mode}\r\nSec-Fetch-Dest: {destination}\r\nConnection: close\r\n\r\n");

        Assert.StartsWith("HTTP/1.1 403", answer, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_plain_link_from_another_site_opens_the_page()
    {
        var answer = await Raw("GET / HTTP/1.1\r\nHost: 127.0.0.1\r\nSec-Fetch-Site: cross-site\r\nSec-Fetch-Mode: navigate\r\nSec-Fetch-Dest: document\r\nConnection: close\r\n\r\n");

        Assert.StartsWith("HTTP/1.1 200", answer, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_giant_photo_is_refused_before_it_is_sent()
    {
        var id = await NewPiece();
        var token = page.Client.DefaultRequestHeaders.GetValues(SiteRule.TokenHeader).Single();

        var answer = await Raw($"POST /api/pieces/{id}/photos?name=x.jpg HTTP/1.1\r\nHost: 127.0.0.1\r\n{SiteRule.TokenHeader}: {token}\r\nContent-Length: 9999999999\r\nConnection: close\r\n\r\nx");

        Assert.StartsWith("HTTP/1.1 413", answer, StringComparison.Ordinal);
        Assert.Contains("too large", answer, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_giant_question_is_refused()
    {
        var token = page.Client.DefaultRequestHeaders.GetValues(SiteRule.TokenHeader).Single();

        var answer = await Raw($"POST /api/pieces HTTP/1.1\r\nHost: 127.0.0.1\r\n{SiteRule.TokenHeader}: {token}\r\nContent-Type: application/json\r\nContent-Length: 16777217\r\nConnection: close\r\n\r\n{{");

        Assert.StartsWith("HTTP/1.1 413", answer, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_giant_photo_without_a_length_is_cut_off_and_leaves_nothing()
    {
        var id = await NewPiece();
        using var endless = new StreamContent(new EndlessStream());
        endless.Headers.ContentLength = null;
        using var request = new HttpRequestMessage(HttpMethod.Post, new Uri($"/api/pieces/{id}/photos?name=x.jpg", UriKind.Relative)) { Content = endless };
        request.Headers.TransferEncodingChunked = true;
        var refused = false;
        try
        {
            using var answer = await page.Client.SendAsync(request, TestContext.Current.CancellationToken);
            refused = answer.StatusCode == HttpStatusCode.RequestEntityTooLarge;
        }
        catch (HttpRequestException)
        {
            // The connection was closed while more was coming, which is as good.
            refused = true;
        }

        Assert.True(refused);
        Assert.Equal(0, (await page.Client.GetFromJsonAsync<JsonElement>($"/api/pieces/{id}", TestContext.Current.CancellationToken)).GetProperty("photos").GetArrayLength());
    }

    [Theory]
    [InlineData("<svg xmlns='http://www.w3.org/2000/svg' onload='alert(1)'>.jpg")]
    [InlineData("\"><script>alert(1)</script>.jpg")]
    [InlineData("%3Cimg src=x onerror=alert(1)%3E.jpg")]
    public async Task Markup_in_names_is_text_in_every_report(string name)
    {
        using var opened = await page.Client.PostAsJsonAsync("/api/pieces", new { name }, cancellationToken: TestContext.Current.CancellationToken);
        var id = (await opened.Content.ReadFromJsonAsync<JsonElement>(cancellationToken: TestContext.Current.CancellationToken)).GetProperty("id").GetString()!;
        using var photo = new ByteArrayContent(await File.ReadAllBytesAsync(SampleImages.PathOf(SampleImages.Blank), TestContext.Current.CancellationToken));
        using var sent = await page.Client.PostAsync(new Uri($"/api/pieces/{id}/photos?name={SampleImages.Blank}", UriKind.Relative), photo, TestContext.Current.CancellationToken);
        await page.Settled(id);
        using var said = await page.Client.PostAsJsonAsync($"/api/pieces/{id}/seen", new { person = name, feature = "signature_position", observation = name }, TestContext.Current.CancellationToken);
        await page.Settled(id);
        using var answer = await page.Client.GetAsync(new Uri($"/api/pieces/{id}/report.html", UriKind.Relative), TestContext.Current.CancellationToken);
        var html = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);

        Assert.True(said.IsSuccessStatusCode);
        Assert.DoesNotContain("<script", html, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("<svg xmlns='", html, StringComparison.Ordinal);
        Assert.DoesNotContain("<img src=x", html, StringComparison.Ordinal);
        Assert.Equal("attachment", answer.Content.Headers.ContentDisposition?.DispositionType);
    }

    [Theory]
    [InlineData("{\"photo\":\"PHOTO\",\"kind\":\"ring\",\"person\":\"A. Harbourer\",\"rim\":[1,2,3],\"opening\":0.5}")]
    [InlineData("{\"photo\":\"PHOTO\",\"kind\":\"ring\",\"person\":\"A. Harbourer\",\"rim\":[600,400,1e300,300,0],\"opening\":0.5}")]
    [InlineData("{\"photo\":\"PHOTO\",\"kind\":\"ring\",\"person\":\"A. Harbourer\",\"rim\":[600,400,300,0,0],\"opening\":0.5}")]
    [InlineData("{\"photo\":\"PHOTO\",\"kind\":\"ring\",\"person\":\"A. Harbourer\",\"rim\":[600,400,300,300,0],\"opening\":1}")]
    [InlineData("{\"photo\":\"PHOTO\",\"kind\":\"ring\",\"person\":\"A. Harbourer\",\"rim\":[600,400,300,300,0]}")]
    public Task A_ring_that_makes_no_sense_changes_nothing(string correction) => A_correction_that_makes_no_sense_changes_nothing(correction);

    [Theory]
    [InlineData("{\"person\":\"A. Harbourer\"}")]
    [InlineData("{\"person\":\"A. Harbourer\",\"circles\":null}")]
    [InlineData("{\"person\":\"A. Harbourer\",\"circles\":[{\"role\":\"outer\",\"ellipse\":[1,1,-5,5,0],\"scalePixels\":100,\"scaleMm\":10}]}")]
    [InlineData("{\"person\":\"A. Harbourer\",\"circles\":[{\"role\":\"outer\",\"ellipse\":[1,1,5,5,0],\"scalePixels\":0,\"scaleMm\":10}]}")]
    [InlineData("{\"person\":\" \",\"circles\":[]}")]
    public async Task Circles_that_make_no_sense_are_not_kept(string circles)
    {
        var piece = await page.Examined(SampleImages.Blank);
        using var body = new StringContent(circles, Encoding.UTF8, "application/json");
        using var answer = await page.Client.PostAsync(new Uri($"/api/photos/{piece.GetProperty("photos")[0].GetProperty("id").GetString()}/circles", UriKind.Relative), body, TestContext.Current.CancellationToken);

        Assert.InRange((int)answer.StatusCode, 400, 499);
    }

    [Theory]
    [InlineData("not a picture")]
    [InlineData("<svg xmlns='http://www.w3.org/2000/svg' onload='alert(1)'/>")]
    [InlineData("")]
    public async Task What_is_no_photo_gets_one_sentence_without_a_path_of_this_machine(string content)
    {
        var id = await NewPiece();
        using var body = new ByteArrayContent(Encoding.UTF8.GetBytes(content));
        using var sent = await page.Client.PostAsync(new Uri($"/api/pieces/{id}/photos?name=../../harbour.jpg", UriKind.Relative), body, TestContext.Current.CancellationToken);

        var problem = (await page.Settled(id)).GetProperty("photos")[0].GetProperty("problem").GetString()!;

        Assert.StartsWith("harbour.jpg: ", problem, StringComparison.Ordinal);
        Assert.DoesNotContain(Path.GetTempPath(), problem, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', problem);
    }

    [Theory]
    [InlineData("{\"photo\":\"PHOTO\",\"kind\":\"tube\",\"person\":\"A. Harbourer\",\"first\":[[0,0],[1e308,1]],\"second\":[[0,0],[1,1]]}")]
    [InlineData("{\"photo\":\"PHOTO\",\"kind\":\"tube\",\"person\":\"A. Harbourer\",\"first\":[[0]],\"second\":null}")]
    [InlineData("{\"photo\":\"PHOTO\",\"kind\":\"line\",\"person\":\"A. Harbourer\",\"box\":[]}")]
    [InlineData("{\"photo\":\"PHOTO\",\"kind\":\"letter\",\"person\":\"A. Harbourer\",\"line\":\"line1\",\"letter\":-5,\"becomes\":\"x\"}")]
    [InlineData("{\"photo\":\"PHOTO\",\"kind\":\"letter\",\"person\":\"\",\"line\":\"line1\",\"letter\":0,\"becomes\":\"x\"}")]
    [InlineData("{\"photo\":\"PHOTO\",\"kind\":\"letter\",\"person\":\"A. Harbourer\",\"line\":\"line1\",\"letter\":0,\"becomes\":\"a\\u0000b\"}")]
    [InlineData("{\"photo\":\"PHOTO\",\"kind\":\"everything\",\"person\":\"A. Harbourer\"}")]
    [InlineData("[1,2")]
    public async Task A_correction_that_makes_no_sense_changes_nothing(string correction)
    {
        var piece = await page.Examined(SampleImages.RomanTransposed);
        var id = piece.GetProperty("id").GetString();
        var photo = piece.GetProperty("photos")[0].GetProperty("id").GetString();
        using var body = new StringContent(correction.Replace("PHOTO", photo, StringComparison.Ordinal), Encoding.UTF8, "application/json");
        using var answer = await page.Client.PostAsync(new Uri($"/api/pieces/{id}/corrections", UriKind.Relative), body, TestContext.Current.CancellationToken);

        Assert.InRange((int)answer.StatusCode, 400, 499);
        var after = await page.Client.GetFromJsonAsync<JsonElement>($"/api/pieces/{id}", TestContext.Current.CancellationToken);
        Assert.Equal(0, after.GetProperty("corrections").GetArrayLength());
    }

    [Fact]
    public async Task A_thousand_requests_at_once_are_all_answered()
    {
        var piece = await page.Examined(SampleImages.RomanTransposed);
        var photo = piece.GetProperty("photos")[0].GetProperty("id").GetString();
        string[] paths = ["/", "/api/pieces", $"/api/pieces/{piece.GetProperty("id").GetString()}", $"/api/photos/{photo}/tiles/1/0/0", "/scripts/main.js", "/nowhere"];

        var answers = await Task.WhenAll(Enumerable.Range(0, 1000).Select(async i =>
        {
            using var answer = await page.Client.GetAsync(new Uri(paths[i % paths.Length], UriKind.Relative), TestContext.Current.CancellationToken);
            await answer.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken);
            return (Path: paths[i % paths.Length], answer.StatusCode);
        }));

        Assert.Equal(1000, answers.Length);
        Assert.All(answers, answer => Assert.Equal(answer.Path == "/nowhere" ? HttpStatusCode.NotFound : HttpStatusCode.OK, answer.StatusCode));
    }

    [Fact]
    public async Task A_thousand_corrections_at_once_are_all_recorded_in_some_order()
    {
        var piece = await page.Examined(SampleImages.RomanTransposed);
        var (id, photo) = (piece.GetProperty("id").GetString()!, piece.GetProperty("photos")[0]);
        var basis = photo.GetProperty("lines")[0].GetProperty("basis").GetString();
        var answers = await Task.WhenAll(Enumerable.Range(0, 1000).Select(async _ =>
        {
            using var answer = await page.Client.PostAsJsonAsync($"/api/pieces/{id}/corrections", new { kind = "letter", line = "line1", letter = 0, was = "K", becomes = "H", basis, person = "A. Harbourer", photo = photo.GetProperty("id").GetString() });
            return answer.StatusCode;
        }));
        var corrections = (await page.Settled(id)).GetProperty("corrections").EnumerateArray().ToList();

        Assert.All(answers, status => Assert.Equal(HttpStatusCode.OK, status));
        Assert.Equal(Enumerable.Range(1, 1000), corrections.Select(one => one.GetProperty("id").GetInt32()));
        Assert.Single(corrections, one => !one.GetProperty("setAside").GetBoolean());
    }

    [Fact]
    public async Task Every_answer_forbids_scripts_and_frames_of_others()
    {
        foreach (var path in new[] { "/", "/api/session", "/nowhere", "/api/pieces/none" })
        {
            using var answer = await page.Client.GetAsync(new Uri(path, UriKind.Relative), TestContext.Current.CancellationToken);
            var rule = answer.Headers.GetValues("Content-Security-Policy").Single();

            Assert.Contains("script-src 'self'", rule, StringComparison.Ordinal);
            Assert.Contains("frame-ancestors 'none'", rule, StringComparison.Ordinal);
            Assert.DoesNotContain("unsafe", rule, StringComparison.Ordinal);
            Assert.Equal("nosniff", answer.Headers.GetValues("X-Content-Type-Options").Single());
        }
    }

    private async Task<string> NewPiece()
    {
        using var opened = await page.Client.PostAsJsonAsync("/api/pieces", new { name = "x" });
        return (await opened.Content.ReadFromJsonAsync<JsonElement>()).GetProperty("id").GetString()!;
    }

    /// <summary>Sends a request as it stands: a client library would tidy it up.</summary>
    private async Task<string> Raw(string request)
    {
        using var socket = new TcpClient();
        await socket.ConnectAsync(IPAddress.Loopback, page.Address.Port);
        await using var stream = socket.GetStream();
        await stream.WriteAsync(Encoding.ASCII.GetBytes(request));
        using var reader = new StreamReader(stream);
        return await reader.ReadToEndAsync();
    }
}

using System;
using System.Linq;
using System.Net;
using System.Net.Http;
using System.Text.RegularExpressions;
using System.Threading.Tasks;
using InscriptionLab.App.Demo;
using InscriptionLab.App.Tests;
using InscriptionLab.Page.Bench;
using Xunit;

namespace InscriptionLab.Page.Tests.Guarding;

/// <summary>A page that other machines may reach lets in who has the link, and nobody else.</summary>
public sealed class OtherMachinesTests
{
    [Fact]
    public async Task Who_has_the_link_comes_in_and_who_has_not_stays_out()
    {
        var request = new ServeRequest(IPAddress.Any, 0, [], null);
        await using var page = PageHost.Build(request, new Workshop((_, key) => new BenchStages(TruthExaminations.Stages(SampleImages.Blank), (_, _, _, _) => null, key), DemoReferences.Load(), true, TimeProvider.System));
        await page.StartAsync(TestContext.Current.CancellationToken);
        var greeting = PageHost.Greeting(page, request);
        var port = Regex.Match(greeting, @"0\.0\.0\.0:(\d+)").Groups[1].Value;
        var key = Regex.Match(greeting, "key=([0-9a-f]+)").Groups[1].Value;
        using var handler = new HttpClientHandler { CookieContainer = new CookieContainer(), CheckCertificateRevocationList = true };
        using var client = new HttpClient(handler) { BaseAddress = new Uri($"http://127.0.0.1:{port}") };

        using var before = await client.GetAsync(new Uri("/api/session", UriKind.Relative), TestContext.Current.CancellationToken);
        using var wrong = await client.GetAsync(new Uri("/enter?key=00", UriKind.Relative), TestContext.Current.CancellationToken);
        using var entered = await client.GetAsync(new Uri($"/enter?key={key}", UriKind.Relative), TestContext.Current.CancellationToken);
        using var after = await client.GetAsync(new Uri("/api/session", UriKind.Relative), TestContext.Current.CancellationToken);

        Assert.Equal(HttpStatusCode.Unauthorized, before.StatusCode);
        Assert.Equal(HttpStatusCode.Unauthorized, wrong.StatusCode);
        Assert.Equal(HttpStatusCode.OK, entered.StatusCode);
        Assert.Equal(HttpStatusCode.OK, after.StatusCode);
        var cookie = handler.CookieContainer.GetAllCookies().Single();
        Assert.True(cookie.HttpOnly);
    }

    [Fact]
    public async Task A_page_for_this_machine_listens_on_no_other_address()
    {
        await using var page = PageHost.Build(OpenPage.Request, new Workshop((_, key) => new BenchStages(TruthExaminations.Stages(SampleImages.Blank), (_, _, _, _) => null, key), DemoReferences.Load(), true, TimeProvider.System));
        await page.StartAsync(TestContext.Current.CancellationToken);

        Assert.Equal("127.0.0.1", new Uri(PageHost.AddressOf(page)).Host);
    }
}

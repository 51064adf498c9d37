using System;
using System.Diagnostics;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Net.Http;
using System.Net.Http.Json;
using System.Text.Json;
using System.Threading.Tasks;
using InscriptionLab.App;
using InscriptionLab.App.Demo;
using InscriptionLab.App.Tests;
using InscriptionLab.Page.Bench;
using InscriptionLab.Page.Guarding;
using Xunit;

namespace InscriptionLab.Page.Tests.Browser;

/// <summary>Measures how long a dropped folder of photos takes, one at a time and two at a time, with the program's own stages. Explicit: it needs the models and an idle machine.</summary>
public sealed class FolderTests
{
    private static readonly string[] Photos = [SampleImages.RomanTransposed, SampleImages.Script, "italic.jpg", "sans.jpg", "roman-around.jpg", "blackletter.jpg"];

    [Fact(Explicit = true)]
    public async Task A_folder_is_examined_faster_two_at_a_time_and_the_first_strip_is_no_later()
    {
        using var composition = new Composition();
        var workshop = new Workshop(composition, DemoReferences.Load(), isDemonstration: true);
        WarmUp.Run(workshop.Stages.Examining, TestContext.Current.CancellationToken);
        var one = await Timed(workshop, 1);
        var two = await Timed(workshop, 2);

        TestContext.Current.TestOutputHelper?.WriteLine(string.Create(CultureInfo.InvariantCulture, $"one at a time: first strip {one.First:0.00} s, all {one.All:0.0} s; two at a time: first strip {two.First:0.00} s, all {two.All:0.0} s"));
        Assert.True(two.All < one.All);
    }

    private static async Task<(double First, double All)> Timed(Workshop workshop, int atOnce)
    {
        await using var page = PageHost.Build(OpenPage.Request, workshop, new BenchLimits { PhotosAtOnce = atOnce });
        await page.StartAsync(TestContext.Current.CancellationToken);
        using var client = new HttpClient { BaseAddress = new Uri(PageHost.AddressOf(page)) };
        client.DefaultRequestHeaders.Add(SiteRule.TokenHeader, (await client.GetFromJsonAsync<JsonElement>("/api/session", TestContext.Current.CancellationToken)).GetProperty("token").GetString());
        var start = Stopwatch.GetTimestamp();
        var pieces = new string[Photos.Length];
        for (var i = 0; i < Photos.Length; i++)
        {
            using var opened = await client.PostAsJsonAsync("/api/pieces", new { name = Photos[i] }, TestContext.Current.CancellationToken);
            pieces[i] = (await opened.Content.ReadFromJsonAsync<JsonElement>(TestContext.Current.CancellationToken)).GetProperty("id").GetString()!;
            using var photo = new ByteArrayContent(await File.ReadAllBytesAsync(SampleImages.PathOf(Photos[i]), TestContext.Current.CancellationToken));
            using var sent = await client.PostAsync(new Uri($"/api/pieces/{pieces[i]}/photos?name={Photos[i]}", UriKind.Relative), photo, TestContext.Current.CancellationToken);
            sent.EnsureSuccessStatusCode();
        }

        var first = 0.0;
        while (true)
        {
            var states = (await client.GetFromJsonAsync<JsonElement>("/api/pieces", TestContext.Current.CancellationToken)).EnumerateArray().ToList();
            if (first == 0 && (await client.GetFromJsonAsync<JsonElement>($"/api/pieces/{pieces[0]}", TestContext.Current.CancellationToken)).GetProperty("photos")[0].GetProperty("strip").ValueKind == JsonValueKind.Object)
            {
                first = Stopwatch.GetElapsedTime(start).TotalSeconds;
            }

            if (states.All(state => !state.GetProperty("working").GetBoolean()))
            {
                return (first, Stopwatch.GetElapsedTime(start).TotalSeconds);
            }

            await Task.Delay(20, TestContext.Current.CancellationToken);
        }
    }
}

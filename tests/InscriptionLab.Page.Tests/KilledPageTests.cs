using System;
using System.Collections.Concurrent;
using System.Collections.Generic;
using System.Diagnostics;
using System.IO;
using System.Linq;
using System.Net.Http;
using System.Net.Http.Json;
using System.Text.Json;
using System.Threading;
using System.Threading.Tasks;
using InscriptionLab.Cataloguing;
using InscriptionLab.Page.Guarding;
using Xunit;

namespace InscriptionLab.Page.Tests;

/// <summary>The page as a process, killed by force while several people correct its catalogue: every correction that was acknowledged is there.</summary>
public sealed class KilledPageTests
{
    private const int People = 4;
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);

    [Fact]
    public Task No_acknowledged_correction_is_lost_by_a_few_kills() => KillAsync(3, 5);

    /// <summary>Takes minutes: by hand. The environment may ask for another number.</summary>
    [Fact(Explicit = true)]
    public Task No_acknowledged_correction_is_lost_by_many_kills() => KillAsync(int.TryParse(Environment.GetEnvironmentVariable("INSCRIPTIONLAB_KILLS"), out var kills) ? kills : 100, 20261201);

    private static async Task KillAsync(int kills, int seed)
    {
        const int Pieces = 20;
        var catalogue = OpenCatalogue.Filled(Pieces);
        var file = catalogue.Address.Name;
        var random = new Random(seed);
        var (sent, acknowledged) = (new ConcurrentBag<string>(), new ConcurrentBag<string>());
        var underway = 0;
        for (var kill = 0; kill < kills; kill++)
        {
            using var page = Start(file);
            try
            {
                if (kill % 10 == 9)
                {
                    // Now and then before the page is open.
                    await Task.Delay(random.Next(50, 1000), TestContext.Current.CancellationToken);
                }
                else
                {
                    var before = acknowledged.Count;
                    var (client, people) = await CorrectAsync(page, kill, Pieces, sent, acknowledged);
                    for (var (wanted, patience) = (before + random.Next(0, 30), Stopwatch.StartNew()); acknowledged.Count < wanted && patience.Elapsed < Patience;)
                    {
                        await Task.Delay(1, TestContext.Current.CancellationToken);
                    }

                    await Task.Delay(random.Next(0, 100), TestContext.Current.CancellationToken);
                    page.Kill();
                    await Task.WhenAll(people);
                    client.Dispose();
                    underway += acknowledged.Count > before ? 1 : 0;
                }
            }
            finally
            {
                if (!page.HasExited)
                {
                    page.Kill();
                }

                await page.WaitForExitAsync(CancellationToken.None);
            }

            Assert.Empty(Catalogue.OpenExisting(file, TimeProvider.System).Health.Check());
        }

        var kept = Kept(Catalogue.OpenExisting(file, TimeProvider.System));
        TestContext.Current.TestOutputHelper?.WriteLine(FormattableString.Invariant($"{kills} kills, {underway} of them after corrections of that run were acknowledged: {sent.Count} corrections sent, {acknowledged.Count} acknowledged, {kept.Count} in the catalogue, {acknowledged.Count(text => !kept.Contains(text))} acknowledged ones lost"));
        Assert.NotEmpty(acknowledged);
        Assert.Subset(kept, acknowledged.ToHashSet(StringComparer.Ordinal));
        Assert.Subset(sent.ToHashSet(StringComparer.Ordinal), kept);
        Directory.Delete(Path.GetDirectoryName(file)!, recursive: true);
    }

    private static Process Start(string catalogue)
    {
        var start = new ProcessStartInfo(Path.Combine(AppContext.BaseDirectory, "InscriptionLab.Page"), ["--port", "0", "--catalogue", catalogue]) { RedirectStandardOutput = true, RedirectStandardError = true };
        var page = Process.Start(start)!;
        page.BeginErrorReadLine();
        return page;
    }

    /// <summary>Waits until the page is open and lets everybody correct as fast as it answers, until it does not any more.</summary>
    private static async Task<(HttpClient Client, List<Task> People)> CorrectAsync(Process page, int kill, int pieces, ConcurrentBag<string> sent, ConcurrentBag<string> acknowledged)
    {
        var greeting = await page.StandardOutput.ReadLineAsync() ?? string.Empty;
        var client = new HttpClient { BaseAddress = new Uri(greeting.Split(' ').Single(word => word.StartsWith("http", StringComparison.Ordinal))) };
        var session = await client.GetFromJsonAsync<JsonElement>("/api/session");
        client.DefaultRequestHeaders.Add(SiteRule.TokenHeader, session.GetProperty("token").GetString());
        var people = Enumerable.Range(0, People).Select(person => Task.Run(async () =>
        {
            try
            {
                for (var number = 0; ; number++)
                {
                    var text = FormattableString.Invariant($"{kill} {person} {number}");
                    sent.Add(text);
                    using var answer = await client.PostAsJsonAsync(FormattableString.Invariant($"/api/catalogue/{1 + ((person + number) % pieces)}/correct"), new { person = $"A. Harbourer {person}", text, line = 0 });
                    if (!answer.IsSuccessStatusCode)
                    {
                        throw new HttpRequestException(await answer.Content.ReadAsStringAsync());
                    }

                    acknowledged.Add(text);
                }
            }
            catch (Exception problem) when (problem is HttpRequestException or IOException or OperationCanceledException)
            {
                // The page is gone.
            }
        })).ToList();
        return (client, people);
    }

    private static HashSet<string> Kept(Catalogue catalogue) => [.. catalogue.Desk.Steps(int.MaxValue)
        .Where(step => step.Sentence.StartsWith("Line ", StringComparison.Ordinal))
        .Select(step => step.Sentence.Split('"')[1])];
}

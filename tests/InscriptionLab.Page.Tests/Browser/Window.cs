using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Text.Json;
using System.Threading.Tasks;
using Microsoft.Playwright;
using Xunit;

namespace InscriptionLab.Page.Tests.Browser;

/// <summary>One window with the page in it, and everything that the page complained of.</summary>
internal sealed class Window : IAsyncDisposable
{
    private static readonly string Axe = Read("axe.min.js");

    private readonly IBrowserContext _context;
    private readonly List<string> _complaints = [];

    internal Window(IBrowserContext context, IPage page)
    {
        _context = context;
        Page = page;
        page.PageError += (_, message) => _complaints.Add(message);
        page.Console += (_, message) =>
        {
            if (message.Type is "error" or "warning")
            {
                _complaints.Add($"{message.Text} ({message.Location})");
            }
        };
        page.Request += (_, request) =>
        {
            if (new Uri(request.Url).Host != "127.0.0.1" && !request.Url.StartsWith("blob:", StringComparison.Ordinal))
            {
                _complaints.Add("The page asked for something that is not on this machine: " + request.Url);
            }
        };
    }

    internal IPage Page { get; }

    public ValueTask DisposeAsync() => _context.DisposeAsync();

    /// <summary>Fails where the page complained of anything.</summary>
    internal void ComplainedOfNothing() => Assert.True(_complaints.Count == 0, string.Join('\n', _complaints));

    /// <summary>Fails where axe-core finds something serious or critical against WCAG 2.2 A and AA.</summary>
    internal async Task IsAccessible()
    {
        await Page.EvaluateAsync(Axe);
        var found = await Page.EvaluateAsync<JsonElement>("""
            async () => {
              const result = await axe.run(document, { runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"] });
              return result.violations.filter(v => v.impact === "serious" || v.impact === "critical")
                .map(v => `${v.id}: ${v.nodes.map(n => n.target.join(" ") + " " + n.failureSummary).slice(0, 3).join(" | ")}`);
            }
            """);
        Assert.Equal(string.Empty, string.Join('\n', found.EnumerateArray().Select(item => item.GetString())));
    }

    private static string Read(string name)
    {
        using var stream = typeof(Window).Assembly.GetManifestResourceStream(name)!;
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}

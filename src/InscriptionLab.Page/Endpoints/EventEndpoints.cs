using System;
using System.Text.Json;
using System.Threading;
using System.Threading.Tasks;
using InscriptionLab.Page.Bench;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.Hosting;

namespace InscriptionLab.Page.Endpoints;

/// <summary>Tells open pages what changed (server-sent events, WHATWG HTML, section 9.2).</summary>
internal static class EventEndpoints
{
    /// <summary>Path of the stream.</summary>
    internal const string Path = "/api/events";

    /// <summary>Most pages that listen at once.</summary>
    private const int MostListeners = 64;

    /// <summary>A sign of life so that nothing between takes the stream for dead.</summary>
    private static readonly TimeSpan Heartbeat = TimeSpan.FromSeconds(15);

    internal static void Map(IEndpointRouteBuilder routes) => routes.MapGet(Path, Stream);

    /// <summary>Streams until the page is closed or the program ends, which would else wait for every open page.</summary>
    private static async Task Stream(HttpContext context, BenchTable table, IHostApplicationLifetime lifetime)
    {
        if (table.Announcer.Listeners >= MostListeners)
        {
            context.Response.StatusCode = StatusCodes.Status503ServiceUnavailable;
            return;
        }

        context.Response.ContentType = "text/event-stream";
        context.Response.Headers.CacheControl = "no-store";
        using var open = CancellationTokenSource.CreateLinkedTokenSource(context.RequestAborted, lifetime.ApplicationStopping);
        var channel = table.Announcer.Listen();
        try
        {
            await context.Response.WriteAsync(": here\n\n", open.Token);
            await context.Response.Body.FlushAsync(open.Token);
            while (!open.IsCancellationRequested)
            {
                using var wait = CancellationTokenSource.CreateLinkedTokenSource(open.Token);
                wait.CancelAfter(Heartbeat);
                var text = await Next(channel, wait.Token);
                await context.Response.WriteAsync(text, open.Token);
                await context.Response.Body.FlushAsync(open.Token);
            }
        }
        catch (OperationCanceledException)
        {
            // The page was closed, or the program ends.
        }
        finally
        {
            table.Announcer.StopListening(channel);
        }
    }

    private static async Task<string> Next(System.Threading.Channels.Channel<Announcement> channel, CancellationToken cancel)
    {
        try
        {
            var said = await channel.Reader.ReadAsync(cancel);
            return $"data: {JsonSerializer.Serialize(said, JsonSerializerOptions.Web)}\n\n";
        }
        catch (OperationCanceledException)
        {
            return ": still here\n\n";
        }
    }
}

using System;
using System.Text.Json;
using System.Threading;
using System.Threading.Tasks;
using InscriptionLab.Page.Bench;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

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

    private static async Task Stream(HttpContext context, BenchTable table)
    {
        if (table.Announcer.Listeners >= MostListeners)
        {
            context.Response.StatusCode = StatusCodes.Status503ServiceUnavailable;
            return;
        }

        context.Response.ContentType = "text/event-stream";
        context.Response.Headers.CacheControl = "no-store";
        var channel = table.Announcer.Listen();
        try
        {
            await context.Response.WriteAsync(": here\n\n", context.RequestAborted);
            await context.Response.Body.FlushAsync(context.RequestAborted);
            while (!context.RequestAborted.IsCancellationRequested)
            {
                using var wait = CancellationTokenSource.CreateLinkedTokenSource(context.RequestAborted);
                wait.CancelAfter(Heartbeat);
                var text = await Next(channel, wait.Token);
                await context.Response.WriteAsync(text, context.RequestAborted);
                await context.Response.Body.FlushAsync(context.RequestAborted);
            }
        }
        catch (OperationCanceledException)
        {
            // The page was closed.
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

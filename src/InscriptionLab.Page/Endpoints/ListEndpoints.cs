using System.Collections.Immutable;
using System.IO;
using System.Linq;
using System.Threading;
using System.Threading.Tasks;
using InscriptionLab.Page.Answers;
using InscriptionLab.Page.Bench;
using InscriptionLab.References;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace InscriptionLab.Page.Endpoints;

/// <summary>The reference list: shown, checked, and used in place of the one before. The file that it came from is never written to.</summary>
internal static class ListEndpoints
{
    private const string Edited = "edited on the page.csv";

    internal static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/api/list", (Workshop workshop) => Results.Ok(Of(workshop.References, [])));
        routes.MapPost("/api/list/check", Check);
        routes.MapPost("/api/list/use", Use);
    }

    /// <summary>The second argument keeps this from counting as a raw handler, whose result would be dropped.</summary>
    private static async Task<IResult> Check(HttpContext context, CancellationToken cancel) => Results.Ok(Of(await Read(context, cancel)));

    private static async Task<IResult> Use(HttpContext context, Workshop workshop, BenchWorker worker)
    {
        var read = await Read(context, context.RequestAborted);
        workshop.Use(read.List, isDemonstration: false);
        worker.AskAll();
        return Results.Ok(Of(read));
    }

    private static async Task<LoadedReferences> Read(HttpContext context, CancellationToken cancel)
    {
        using var body = new MemoryStream();
        await context.Request.Body.CopyToAsync(body, cancel);
        var isJson = context.Request.ContentType?.Contains("json", System.StringComparison.OrdinalIgnoreCase) ?? false;
        return new ReferenceListReader().Read(isJson ? Path.ChangeExtension(Edited, ".json") : Edited, body.ToArray());
    }

    private static ListTextAnswer Of(LoadedReferences read) => Of(read.List, read.Warnings);

    /// <summary>Every column goes to the page and comes back: what the page does not show must not be lost where a list is used.</summary>
    private static ListTextAnswer Of(ReferenceList list, ImmutableArray<string> warnings) => new(list.Name, ReferenceColumns.All, ReferenceColumns.Words, [.. list.Forms.Select(ReferenceColumns.Of)], warnings);
}

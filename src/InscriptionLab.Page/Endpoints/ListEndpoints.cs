using System.Collections.Immutable;
using System.Globalization;
using System.IO;
using System.Linq;
using System.Threading;
using System.Threading.Tasks;
using InscriptionLab.App.Records;
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

    private static readonly ImmutableArray<string> Columns = ["form", "maker", "status", "style", "address", "from", "to", "source", "note"];

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

    private static ListTextAnswer Of(ReferenceList list, ImmutableArray<string> warnings) => new(list.Name, Columns, [.. list.Forms.Select(Row)], warnings);

    private static ImmutableArray<string> Row(ReferenceForm form) =>
    [
        form.Form, form.Maker, Words.For(form.Status), form.Style ?? string.Empty, form.Address ?? string.Empty,
        form.From?.ToString(CultureInfo.InvariantCulture) ?? string.Empty, form.To?.ToString(CultureInfo.InvariantCulture) ?? string.Empty, form.Source ?? string.Empty, form.Note ?? string.Empty,
    ];
}

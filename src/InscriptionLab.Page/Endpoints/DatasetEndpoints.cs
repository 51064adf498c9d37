using System.IO;
using System.Linq;
using InscriptionLab.Exchange;
using InscriptionLab.Outcomes;
using InscriptionLab.Page.Answers;
using InscriptionLab.Page.Bench;
using InscriptionLab.Page.Keeping;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace InscriptionLab.Page.Endpoints;

/// <summary>Data sets of what a search of the catalogue found: begun, looked after, stopped, taken away as one file.</summary>
internal static class DatasetEndpoints
{
    private const int LongestLicence = 200;

    internal static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/api/dataset", (DatasetDesk desk) => Results.Ok(Answer(desk.State)));
        routes.MapPost("/api/dataset", Begin);
        routes.MapPost("/api/dataset/stop", (DatasetDesk desk) =>
        {
            desk.Stop();
            return Results.NoContent();
        });
        routes.MapGet("/api/dataset/lettering.zip", (DatasetDesk desk) => desk.File is { } file
            ? Results.File(new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.Read | FileShare.Delete), "application/zip", "lettering.zip")
            : BenchEndpoints.NotThere());
    }

    private static IResult Begin(DatasetRequestAsked asked, HttpContext context, DatasetDesk desk, CatalogueShelf shelf)
    {
        if (asked.Threshold is not (>= -1 and <= 1))
        {
            throw new InscriptionLabException("The likeness of a group is a number from -1 to 1.");
        }

        var licence = ShownName.Line(asked.Licence, LongestLicence + 1);
        if (licence.Length > LongestLicence)
        {
            throw new InscriptionLabException($"The licence is longer than {LongestLicence} characters; name it, or give its address.");
        }

        var found = shelf.Open.Search.Find(CatalogueQuestion.Of(context.Request.Query, DatasetDesk.MostExaminations + 1));
        desk.Begin([.. found.Select(hit => hit.Examination)], licence.Length == 0 ? null : licence, asked.Seed, (float)asked.Threshold);
        return Results.Ok(Answer(desk.State));
    }

    private static DatasetAnswer Answer(DatasetState state) => new(
        state.IsWorking,
        state.Progress is { } at ? WordOf(at.Step) : string.Empty,
        state.Progress?.Done ?? 0,
        state.Progress?.Total ?? 0,
        state.Problem,
        state.Result is { } built ? new DatasetResultAnswer(built.Marks, built.Letters, built.Objects, built.Groups, built.Corrected, [.. built.Parts.Select(part => new DatasetPartAnswer(part.Name, part.Marks, part.Objects))], built.Warnings) : null,
        state.Bytes);

    private static string WordOf(DatasetStep step) => step switch
    {
        DatasetStep.Collecting => "collecting",
        DatasetStep.Grouping => "grouping",
        DatasetStep.Writing => "writing",
        _ => "packing",
    };
}

using System;
using System.IO;
using System.Linq;
using System.Threading.Tasks;
using InscriptionLab.App;
using InscriptionLab.App.Reports;
using InscriptionLab.Findings;
using InscriptionLab.Page.Answers;
using InscriptionLab.Page.Bench;
using InscriptionLab.Page.Guarding;
using InscriptionLab.Page.Keeping;
using InscriptionLab.Vision.Photos;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.AspNetCore.Routing;

namespace InscriptionLab.Page.Endpoints;

/// <summary>Pieces, their photos and their corrections.</summary>
internal static class BenchEndpoints
{
    private static readonly PhotoLimits Limits = new();

    internal static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/api/session", Session);
        routes.MapGet("/api/pieces", (BenchTable table) => Results.Ok(table.Pieces.Select(Summary)));
        routes.MapPost("/api/pieces", (PieceRequest asked, BenchTable table) => Results.Ok(AnswerMaker.Of(table.Open(asked.Name))));
        routes.MapGet("/api/pieces/{piece}", One);
        routes.MapDelete("/api/pieces/{piece}", Close);
        routes.MapPost("/api/pieces/{piece}/photos", Upload);
        routes.MapDelete("/api/pieces/{piece}/photos/{photo}", Remove);
        routes.MapPost("/api/pieces/{piece}/corrections", Correct);
        routes.MapGet("/api/checklist", () => Results.Ok(ChecklistMaker.Questions));
        routes.MapPost("/api/pieces/{piece}/seen", Seen);
        routes.MapPost("/api/pieces/{piece}/undo", (string piece, BenchTable table, BenchWorker worker) => Step(piece, table, worker, found => found.Undo()));
        routes.MapPost("/api/pieces/{piece}/redo", (string piece, BenchTable table, BenchWorker worker) => Step(piece, table, worker, found => found.Redo()));
    }

    internal static IResult NotThere() => Results.Json(new ProblemAnswer("This is no longer on the bench."), statusCode: StatusCodes.Status404NotFound);

    private static IResult Session(PageKeys keys, Workshop workshop, CatalogueShelf shelf) => Results.Ok(new SessionAnswer(
        keys.FormToken,
        ProgramFacts.NameAndVersion,
        Limits.FileBytes,
        new ListAnswer(workshop.References.Name, workshop.References.Forms.Length, workshop.IsDemonstration),
        shelf.Name is { } name ? System.IO.Path.GetFileName(name) : null,
        Cautions.Sentences));

    private static PieceSummary Summary(Piece piece) => new(
        piece.Id,
        piece.Name,
        piece.Version,
        [.. piece.Photos.Select(photo => photo.Id)],
        piece.Photos.FirstOrDefault()?.State.Tiles?.Levels ?? 0,
        piece.Together.Sets.Select(set => set.Examination.Finding).Concat(piece.Photos.Select(photo => photo.State.Finding).OfType<Finding>()).FirstOrDefault() is { } finding ? App.Records.Words.For(finding.Outcome) : null,
        piece.Together.IsWorking || piece.Photos.Any(photo => photo.IsWorking));

    /// <summary>A piece that is asked for is looked at.</summary>
    private static IResult One(string piece, BenchTable table, BenchWorker worker)
    {
        if (table.Piece(piece) is not { } found)
        {
            return NotThere();
        }

        worker.LookAt(found);
        return Results.Ok(AnswerMaker.Of(found));
    }

    private static IResult Close(string piece, BenchTable table, BenchWorker worker)
    {
        if (table.Piece(piece) is not { } found)
        {
            return NotThere();
        }

        table.Close(found);
        worker.Forget(found);
        return Results.NoContent();
    }

    private static IResult Remove(string piece, string photo, BenchTable table, BenchWorker worker)
    {
        if (table.Piece(piece) is not { } found || found.Photos.FirstOrDefault(known => known.Id == photo) is not { } known)
        {
            return NotThere();
        }

        table.Remove(found, known);
        worker.Forget(known);

        // What is left is read together anew.
        worker.Ask(found);
        return Results.NoContent();
    }

    private static async Task<IResult> Upload(string piece, HttpContext context, BenchTable table, BenchWorker worker, Workshop workshop)
    {
        if (table.Piece(piece) is not { } found)
        {
            return NotThere();
        }

        table.CheckRoom(found);
        if (context.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } size)
        {
            size.MaxRequestBodySize = Limits.FileBytes;
        }

        var file = table.NewFile();
        try
        {
            await using var target = new FileStream(file, FileMode.CreateNew, FileAccess.Write);
            await context.Request.Body.CopyToAsync(target, context.RequestAborted);
        }
        catch
        {
            File.Delete(file);
            throw;
        }

        var photo = table.Add(found, context.Request.Query["name"], file, workshop.Stages.Declared(file));
        worker.Ask(photo);
        table.Changed(found);
        return Results.Ok(AnswerMaker.Of(photo));
    }

    private static IResult Correct(string piece, CorrectionRequest asked, BenchTable table, BenchWorker worker, Workshop workshop)
    {
        if (table.Piece(piece) is not { } found)
        {
            return NotThere();
        }

        if (found.Photos.FirstOrDefault(known => known.Id == asked.Photo) is { } photo)
        {
            CorrectionReader.Record(found, photo, asked, workshop.Clock.GetUtcNow());
            worker.Ask(photo, isAwaited: true);
        }
        else if (found.Together.Sets.FirstOrDefault(known => known.Place == asked.Photo) is { } set)
        {
            CorrectionReader.Record(found, set, asked, workshop.Clock.GetUtcNow());
            worker.Ask(found);
        }
        else
        {
            return NotThere();
        }

        table.Changed(found);
        return Results.Ok(AnswerMaker.Of(found));
    }

    private static IResult Seen(string piece, SeenRequest asked, BenchTable table, BenchWorker worker, Workshop workshop)
    {
        if (table.Piece(piece) is not { } found)
        {
            return NotThere();
        }

        CorrectionReader.Record(found, asked, workshop.Clock.GetUtcNow());
        worker.Ask(found);
        table.Changed(found);
        return Results.Ok(AnswerMaker.Of(found));
    }

    private static IResult Step(string piece, BenchTable table, BenchWorker worker, Func<Piece, Correction?> step)
    {
        if (table.Piece(piece) is not { } found)
        {
            return NotThere();
        }

        if (step(found) is { } correction)
        {
            if (table.Photo(correction.PhotoId) is { } photo)
            {
                worker.Ask(photo, isAwaited: true);
            }
            else
            {
                worker.Ask(found);
            }
        }

        table.Changed(found);
        return Results.Ok(AnswerMaker.Of(found));
    }
}

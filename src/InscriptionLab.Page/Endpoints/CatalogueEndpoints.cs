using System;
using System.Collections.Generic;
using System.Linq;
using System.Text;
using InscriptionLab.Cataloguing;
using InscriptionLab.Exchange;
using InscriptionLab.Outcomes;
using InscriptionLab.Page.Answers;
using InscriptionLab.Page.Bench;
using InscriptionLab.Page.Keeping;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace InscriptionLab.Page.Endpoints;

/// <summary>The catalogue: search, one examination, marks alike, keeping and laying out again, trash and undo.</summary>
internal static class CatalogueEndpoints
{
    /// <summary>Most rows of one answer; beyond, the page asks to narrow the search.</summary>
    private const int MostRows = 20_000;

    private const int MostAlike = 24;

    internal static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/api/catalogue", Find);
        routes.MapGet("/api/catalogue/{number:long}", One);
        routes.MapGet("/api/catalogue/{number:long}/lines/{line:int}", Picture);
        routes.MapGet("/api/catalogue/{number:long}/object", KeptObject);
        routes.MapGet("/api/catalogue/{number:long}/pictures/{name}", SetPicture);
        routes.MapGet("/api/catalogue/{number:long}/alike", Alike);
        routes.MapPost("/api/catalogue/{number:long}/correct", (long number, HandRequest asked, CatalogueShelf shelf) => Done(() => shelf.Open.Desk.Correct(number, asked.Line, asked.Text ?? string.Empty, Person(asked.Person), string.Empty)));
        routes.MapPost("/api/catalogue/keep/{piece}", Keep);
        routes.MapPost("/api/catalogue/lay-out", LayOut);
        routes.MapPost("/api/catalogue/trash", (HandRequest asked, CatalogueShelf shelf) => Done(() => shelf.Open.Desk.Trash(asked.Text ?? string.Empty, true, Person(asked.Person))));
        routes.MapPost("/api/catalogue/undo", (CatalogueShelf shelf) => Results.Ok(new SentenceAnswer(shelf.Open.Desk.Undo() ?? string.Empty)));
    }

    private static IResult Find(HttpContext context, CatalogueShelf shelf)
    {
        var hits = shelf.Open.Search.Find(CatalogueQuestion.Of(context.Request.Query, MostRows));
        return Results.Ok(hits.Select(Row));
    }

    private static CatalogueRowAnswer Row(SearchHit hit) => new(hit.Examination, hit.ObjectKey, System.IO.Path.GetFileName(hit.File.Replace('\\', '/')), hit.MadeAt, hit.Outcome, hit.Text, hit.Nearest, hit.Maker, hit.Edits, null);

    private static IResult One(long number, CatalogueShelf shelf) => shelf.Open.Search.RecordOf(number) is { } record
        ? Results.Text(record, "application/json", Encoding.UTF8)
        : BenchEndpoints.NotThere();

    private static IResult KeptObject(long number, CatalogueShelf shelf) => shelf.Open.Search.ObjectOf(number) is { } shown
        ? Results.Ok(new KeptObjectAnswer(
            shown.Key,
            shown.Title,
            [.. shown.Seen.Select(seen => new KeptSeenAnswer(ObservationWords.Of(seen), seen.IsDated ? ObservationWords.Years(seen) : string.Empty, seen.Source, seen.By, seen.MadeAt))],
            [.. shelf.Open.Search.PicturesOf(number).Select(picture => new SetPictureAnswer(picture.Name, [picture.Width, picture.Height]))]))
        : BenchEndpoints.NotThere();

    private static IResult SetPicture(long number, string name, CatalogueShelf shelf, HttpContext context)
    {
        if (shelf.Open.Search.PictureOf(number, name) is not { } picture)
        {
            return Results.NotFound();
        }

        context.Response.Headers.CacheControl = "private, max-age=3600";
        return Results.Bytes(picture.File.ToArray(), picture.MediaType);
    }

    private static IResult Picture(long number, int line, CatalogueShelf shelf, HttpContext context)
    {
        if (shelf.Open.Likeness.PictureOf(number, line) is not { } picture)
        {
            return Results.NotFound();
        }

        context.Response.Headers.CacheControl = "private, max-age=3600";
        return Results.Bytes(picture, "image/png");
    }

    private static IResult Alike(long number, int? line, CatalogueShelf shelf)
    {
        var source = shelf.Open.Likeness;
        var sought = source.LineOf(number, line ?? 0) ?? throw new InscriptionLabException("This line has no picture in the catalogue, so nothing can be laid beside it.");
        var rows = new List<CatalogueRowAnswer>();
        foreach (var like in source.Load().Nearest([.. source.Of(sought)!], MostAlike + 1).Where(like => like.Id != sought))
        {
            if (shelf.Open.Search.OfLine(like.Id) is { } hit && source.PositionOf(like.Id) is { } position)
            {
                rows.Add(Row(hit) with { Alike = new AlikeAnswer(position, Math.Round(like.Likeness, 3)) });
            }
        }

        return Results.Ok(rows.Take(MostAlike));
    }

    private static IResult Keep(string piece, HandRequest asked, BenchTable table, CatalogueShelf shelf) => table.Piece(piece) is { } found
        ? Results.Ok(new KeptAnswer(shelf.Keep(found, Person(asked.Person)), found.Photos.Length))
        : BenchEndpoints.NotThere();

    private static IResult LayOut(HandRequest asked, BenchTable table, BenchWorker worker, CatalogueShelf shelf)
    {
        var piece = shelf.LayOut(asked.Text ?? string.Empty, table);
        foreach (var photo in piece.Photos)
        {
            worker.Ask(photo);
        }

        table.Changed(piece);
        return Results.Ok(AnswerMaker.Of(piece));
    }

    private static IResult Done(Action act)
    {
        act();
        return Results.NoContent();
    }

    private static string Person(string? given) =>
        ShownName.Of(given, string.Empty, 60) is { Length: > 0 } name ? name : throw new InscriptionLabException("What is changed in the catalogue carries the name of who did it; write yours first.");
}

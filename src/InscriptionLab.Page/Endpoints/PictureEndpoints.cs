using System.Linq;
using InscriptionLab.Page.Answers;
using InscriptionLab.Page.Bench;
using InscriptionLab.Vision.Pictures;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace InscriptionLab.Page.Endpoints;

/// <summary>Pictures: tiles of photos, strips, cut-out lines. Their addresses change whenever they do, so the browser may keep them.</summary>
internal static class PictureEndpoints
{
    private const string Jpeg = "image/jpeg";
    private const string Png = "image/png";

    internal static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/api/photos/{photo}/tiles/{level:int}/{column:int}/{row:int}", Tile);
        routes.MapGet("/api/photos/{photo}/strip/{key}", Strip);
        routes.MapGet("/api/photos/{photo}/lines/{key}", Line);
        routes.MapGet("/api/pieces/{piece}/sets/{set}/lines/{line:int}", SetLine);
        routes.MapGet("/api/pieces/{piece}/sets/{set}/pictures/{name}", SetPicture);
    }

    private static IResult Tile(string photo, int level, int column, int row, BenchTable table, HttpContext context) =>
        Kept(context, table.Photo(photo)?.State.Tiles?.Tile(level, column, row), Jpeg);

    private static IResult Strip(string photo, string key, BenchTable table, HttpContext context) =>
        Kept(context, table.Photo(photo)?.State.StripOf(key) is { } strip ? PictureEncoder.ToJpeg(strip.Image) : null, Jpeg);

    private static IResult Line(string photo, string key, BenchTable table, HttpContext context)
    {
        var line = table.Photo(photo)?.State.Lines.FirstOrDefault(worked => AnswerMaker.CropKey(worked) == key);
        return Kept(context, line is null ? null : PictureEncoder.ToPng(line.Reading.Line.Crop), Png);
    }

    private static IResult SetLine(string piece, string set, int line, BenchTable table, HttpContext context)
    {
        var lines = Set(piece, set, table)?.Examination.Reading.Lines ?? [];
        return Kept(context, line >= 0 && line < lines.Length ? PictureEncoder.ToPng(lines[line].Line.Crop) : null, Png);
    }

    private static IResult SetPicture(string piece, string set, string name, BenchTable table, HttpContext context)
    {
        var picture = Set(piece, set, table) is { } found ? SetMaker.Picture(found, name) : null;
        return Kept(context, picture?.File, picture?.Type ?? Png);
    }

    private static JointSet? Set(string piece, string set, BenchTable table) => table.Piece(piece)?.Together.Sets.FirstOrDefault(known => known.Key == set);

    private static IResult Kept(HttpContext context, byte[]? picture, string type)
    {
        if (picture is null)
        {
            return Results.NotFound();
        }

        context.Response.Headers.CacheControl = "private, max-age=86400, immutable";
        return Results.Bytes(picture, type);
    }
}

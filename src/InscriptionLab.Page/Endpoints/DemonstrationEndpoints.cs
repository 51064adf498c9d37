using System;
using System.Collections.Generic;
using System.IO;
using System.Linq;
using InscriptionLab.Outcomes;
using InscriptionLab.Page.Answers;
using InscriptionLab.Page.Bench;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace InscriptionLab.Page.Endpoints;

/// <summary>Lays a few rendered photos of invented pieces on the bench, so that everything can be tried before a photo of one's own is there.</summary>
internal static class DemonstrationEndpoints
{
    private static readonly string Folder = Path.Combine(AppContext.BaseDirectory, "demonstration");

    /// <summary>Pieces with their photos; the first one is shown.</summary>
    private static readonly (string Name, string[] Files)[] Pieces =
    [
        ("Draw tube, two letters swapped", ["roman-transposed.jpg"]),
        ("Draw tube, three lines of capitals", ["roman-three-lines.jpg"]),
        ("One view under four lamps", ["raking-1.jpg", "raking-2.jpg", "raking-3.jpg", "raking-4.jpg"]),
        ("A lamp burns out the lettering", ["glare.jpg"]),
        ("Lens cell beside a board", ["cell-checkerboard.jpg"]),
    ];

    internal static void Map(IEndpointRouteBuilder routes) => routes.MapPost("/api/demonstration", Lay);

    private static IResult Lay(BenchTable table, BenchWorker worker, Workshop workshop)
    {
        if (!Directory.Exists(Folder))
        {
            throw new InscriptionLabException("The photos of the demonstration are not beside the program; build it anew with ./lab serve.");
        }

        // Opened last to first: the latest piece stands first on the bench. Worked on first to last.
        var opened = Pieces.Reverse().Select(piece => Open(table, workshop, piece.Name, piece.Files)).Reverse().ToList();
        foreach (var photo in opened.SelectMany(piece => piece.Photos))
        {
            worker.Ask(photo);
        }

        return Results.Ok(opened.Select(AnswerMaker.Of));
    }

    private static Piece Open(BenchTable table, Workshop workshop, string name, IEnumerable<string> files)
    {
        var piece = table.Open(name);
        foreach (var file in files)
        {
            table.CheckRoom(piece);
            var copy = table.NewFile();
            File.Copy(Path.Combine(Folder, file), copy);
            table.Add(piece, file, copy, workshop.Stages.Declared(copy));
        }

        return piece;
    }
}

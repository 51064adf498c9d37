using System;
using System.Linq;
using System.Text;
using InscriptionLab.App;
using InscriptionLab.App.Reports;
using InscriptionLab.App.Reports.Papers;
using InscriptionLab.Outcomes;
using InscriptionLab.Page.Answers;
using InscriptionLab.Page.Bench;
using InscriptionLab.Page.Measuring;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace InscriptionLab.Page.Endpoints;

/// <summary>Reports of what lies on the bench, to be kept as a file.</summary>
internal static class ReportEndpoints
{
    private const string Pdf = "application/pdf";

    internal static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/api/pieces/{piece}/report.pdf", (string piece, BenchTable table, MeasuringTable measuring, Workshop workshop) => Pieces([piece], false, true, table, measuring, workshop));
        routes.MapGet("/api/pieces/{piece}/report.html", (string piece, BenchTable table, MeasuringTable measuring, Workshop workshop) => Pieces([piece], false, false, table, measuring, workshop));
        routes.MapGet("/api/pieces/{piece}/short.pdf", (string piece, BenchTable table, MeasuringTable measuring, Workshop workshop) => Pieces([piece], true, true, table, measuring, workshop));
        routes.MapGet("/api/report.pdf", (BenchTable table, MeasuringTable measuring, Workshop workshop) => Pieces([.. table.Pieces.Reverse().Select(piece => piece.Id)], false, true, table, measuring, workshop));
    }

    private static IResult Pieces(string[] ids, bool isShort, bool asPdf, BenchTable table, MeasuringTable measuring, Workshop workshop)
    {
        var pieces = ids.Select(table.Piece).OfType<Piece>().ToList();
        if (pieces.Count == 0)
        {
            return BenchEndpoints.NotThere();
        }

        if (pieces.Any(piece => piece.Together.IsWorking || piece.Photos.Any(photo => photo.IsWorking)))
        {
            throw new InscriptionLabException("The work on the photos is not finished; wait for the finding and ask for the report again.");
        }

        var made = workshop.Clock.GetLocalNow();
        var title = pieces.Count == 1 ? pieces[0].Name : FormattableString.Invariant($"{pieces.Count} pieces");
        var objects = pieces.Select(piece => PiecePaper.Of(piece, AnswerMaker.Asks(piece), photo => MeasuredPaper.Of(photo, measuring), workshop)).ToList();
        var paper = CommandWords.Without(isShort ? ShortForm.Of(title, [.. objects], made, ProgramFacts.NameAndVersion) : FullReport.Of(title, [.. objects], made, ProgramFacts.NameAndVersion));
        return asPdf
            ? Results.File(PdfPaper.Of(paper), Pdf, isShort ? "short.pdf" : "report.pdf")
            : Results.File(Encoding.UTF8.GetBytes(HtmlPaper.Of(paper)), "application/octet-stream", "report.html");
    }
}

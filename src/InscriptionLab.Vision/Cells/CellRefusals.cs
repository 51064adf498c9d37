using InscriptionLab.Cells;
using InscriptionLab.Outcomes;

namespace InscriptionLab.Vision.Cells;

/// <summary>Why a cell is not measured, each with what to do.</summary>
internal static class CellRefusals
{
    /// <summary>Gives the refusal for what is missing, or null where nothing is.</summary>
    internal static Refusal? Of(string stage, ScaleSighting? scale, bool rimFound, MeasureRequest request)
    {
        if (scale is null)
        {
            if (request.Scale is { Kind: ScaleKind.Disc } disc)
            {
                return disc.Size is null
                    ? new Refusal(stage, "A disc gives the scale, but its diameter is not known.", "Measure it with calipers and give it (--scale disc:23.25mm).")
                    : new Refusal(stage, "No disc was found beside the cell, or the photo does not tell disc from cell.", "Mark a point on the disc (--scale disc:23.25mm@820,410, in pixels of the upright photo), and see that both lie wholly in the photo, apart.");
            }

            if (request.Scale is { Kind: ScaleKind.Points })
            {
                return new Refusal(stage, "Two points give the scale, but their places or their distance are not known.", "Give both (--scale points:50mm@210,640/790,655, in pixels of the upright photo).");
            }

            var what = request.Scale is null ? "no scale was found beside the cell" : $"no {Name(request.Scale.Kind)} was found beside the cell";
            return rimFound
                ? new Refusal(stage, $"A cell is seen, but {what}, so nothing can be said in millimetres.", "Put a rule or checkerboard in the plane of the rim, wholly in the photo and in focus, and say what it is and how large (--scale with kind and size; a bank card: --scale id1).")
                : new Refusal(stage, $"No lens cell is seen in this photo, and {what}.", "Photograph one cell from straight above, its whole rim in the photo, with a rule, checkerboard or bank card in the plane of the rim.");
        }

        if (!rimFound)
        {
            return new Refusal(stage, $"A {Name(scale.Kind)} is seen, but no lens cell beside it.", "Photograph one cell from straight above, its whole rim in the photo and apart from the scale.");
        }

        return scale.SizeAssumed && scale.Kind is not (ScaleKind.Rule or ScaleKind.Card)
            ? new Refusal(stage, $"A {Name(scale.Kind)} is seen, but its size is not known.", Size(scale.Kind))
            : null;
    }

    private static string Size(ScaleKind kind) => kind == ScaleKind.Checkerboard
        ? "Measure the side of one square and give it (--scale checkerboard:5mm)."
        : "Measure the side of one marker's black square and give it (--scale aruco:10mm).";

    private static string Name(ScaleKind kind) => kind switch
    {
        ScaleKind.Card => "scale card",
        ScaleKind.Checkerboard => "checkerboard",
        ScaleKind.Rule => "rule",
        ScaleKind.Id1 => "card of bank-card size (ID-1)",
        ScaleKind.Disc => "disc",
        ScaleKind.Points => "pair of points",
        _ => "coded square marker",
    };
}

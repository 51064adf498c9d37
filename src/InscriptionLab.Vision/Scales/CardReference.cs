using System.Collections.Immutable;
using System.Linq;
using System.Threading;
using InscriptionLab.Cells;
using InscriptionLab.Cells.Fitting;
using InscriptionLab.Imaging;
using InscriptionLab.Measures;

namespace InscriptionLab.Vision.Scales;

/// <summary>Finds the printable scale card by its coded squares, which lie on one board at known places: the whole card is one long scale.</summary>
internal sealed class CardReference : IScaleReference
{
    /// <summary>Fewest squares of the card: fewer may be somebody's own squares.</summary>
    private const int FewestMarkers = 4;

    /// <summary>Farthest a corner may lie from where the others put it, as a share of a square's side in the picture: squares laid out otherwise are no card.</summary>
    private const double Tolerance = 0.15;

    /// <inheritdoc/>
    public ScaleKind Kind => ScaleKind.Card;

    /// <inheritdoc/>
    public ScaleSighting? Find(GrayImage image, Length? size, CancellationToken cancel)
    {
        var seen = MarkerDetection.Of(image, true, cancel);
        var card = seen.Squares.Zip(seen.Numbers)
            .Select(m => (Square: m.First, Place: ScaleCard.PlaceOf(m.Second)))
            .Where(m => m.Place is not null)
            .Select(m => (m.Square, Place: m.Place!.Value))
            .ToArray();
        if (card.Length < FewestMarkers || !LaidOut(card))
        {
            return null;
        }

        // A card that is printed too large or small is so evenly: every place on it grows with the check line.
        var check = size ?? ScaleCard.CheckLength;
        var truth = check / ScaleCard.CheckLength;
        var picture = LightPicture.From(image);
        var corners = ImmutableArray.CreateBuilder<CornerObservation>();
        var edges = ImmutableArray.CreateBuilder<EdgeObservation>();
        foreach (var (square, place) in card)
        {
            var (x, y) = (place.X * truth, place.Y * truth);
            edges.AddRange(MarkerEdges.Read(picture, square, seen.Cells, 0, ScaleCard.MarkerMillimetres * truth)
                .Select(e => e with { Value = e.Value + (e.AcrossX ? x : y) }));
            corners.AddRange(Corners(place).Zip(square).Select(c => new CornerObservation(0, c.First.X * truth, c.First.Y * truth, c.Second)));
        }

        return edges.Count == 0
            ? null
            : new ScaleSighting(ScaleKind.Card, check, size is null, corners.ToImmutable(), edges.ToImmutable(), [], ArucoReference.Outline([.. card.Select(c => c.Square)]));
    }

    private static PixelPoint[] Corners((double X, double Y) place)
    {
        const double Side = ScaleCard.MarkerMillimetres;
        return [new(place.X, place.Y), new(place.X + Side, place.Y), new(place.X + Side, place.Y + Side), new(place.X, place.Y + Side)];
    }

    private static bool LaidOut((PixelPoint[] Square, (double X, double Y) Place)[] card)
    {
        var plane = card.SelectMany(c => Corners(c.Place)).ToArray();
        var picture = card.SelectMany(c => c.Square).ToArray();
        if (PlaneHomography.Fit(plane, picture) is not { } map)
        {
            return false;
        }

        var side = card.Average(c => c.Square[0].DistanceTo(c.Square[1]).Pixels);
        return plane.Zip(picture).All(p => map.ToPicture(p.First.X, p.First.Y).DistanceTo(p.Second).Pixels <= Tolerance * side);
    }
}

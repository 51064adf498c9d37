using System;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Lines;
using InscriptionLab.Measures;
using InscriptionLab.Readings;
using InscriptionLab.Vision.Lines;

namespace InscriptionLab.Vision.Reading;

/// <summary>Boxes of the letters of one line in its crop: sideways from the network's letter edges, up and down from the picture.</summary>
/// <param name="line">The line.</param>
/// <param name="sight">What the network saw in it.</param>
internal sealed class LetterBoxes(LetteringLine line, LineSight sight)
{
    /// <summary>Least width of a box in crop pixels.</summary>
    private const double Narrowest = 2;

    /// <summary>
    /// How much farther out letters reach than the network puts their sides, as shares of the ink's height: what letters of rendered photos, found and cut, were short
    /// of on average. The network was taught the middle of many possible sides, and blur hides the ends of thin strokes.
    /// </summary>
    private const double LeftReach = 0.012;

    /// <inheritdoc cref="LeftReach"/>
    private const double RightReach = 0.028;

    /// <summary>Gives one box a letter; a space gets the room between its neighbours.</summary>
    internal ImmutableArray<Quad> Of(ImmutableArray<LetterEvidence> letters)
    {
        var sides = new (double Left, double Right)[letters.Length];
        for (var index = 0; index < letters.Length; index++)
        {
            sides[index] = Sides(letters[index]);
        }

        var ink = Enumerable.Range(0, letters.Length).Where(index => letters[index].Character != " ").ToArray();
        var (top, bottom) = InkRows(line.Crop.Height);
        var rows = ink.Length == 0 ? [] : new LetterRows(line.Crop).Of([.. ink.Select(index => (letters[index].Character, sides[index].Left, sides[index].Right))], top, bottom);
        var boxes = new Quad[letters.Length];
        for (var place = 0; place < ink.Length; place++)
        {
            var (left, right) = (sides[ink[place]].Left - (LeftReach * (bottom - top)), sides[ink[place]].Right + (RightReach * (bottom - top)));
            boxes[ink[place]] = LetterQuads.Rectangle(left, rows[place].Top, Math.Max(right, left + Narrowest), rows[place].Bottom);
        }

        for (var index = 1; index + 1 < letters.Length; index++)
        {
            if (letters[index].Character == " ")
            {
                var (left, right) = (sides[index - 1].Right, sides[index + 1].Left);
                boxes[index] = LetterQuads.Rectangle(left, top, Math.Max(right, left + Narrowest), bottom);
            }
        }

        return [.. boxes];
    }

    /// <summary>Gives a letter with its left and right edge.</summary>
    internal (string Character, double Left, double Right) Named(LetterEvidence letter)
    {
        var (left, right) = Sides(letter);
        return (letter.Character, left, right);
    }

    /// <summary>Gives the rows between which the ink of a crop lies, along outer pixel edges.</summary>
    internal static (double Top, double Bottom) InkRows(int height)
    {
        var share = new LineCropOptions().InkShare;
        return ((height * (1 - share) / 2) - 0.5, (height * (1 + share) / 2) - 0.5);
    }

    private (double Left, double Right) Sides(LetterEvidence letter)
    {
        var frame = Math.Clamp((int)Math.Round(letter.CentreFrame), 0, sight.Edges.Length - 1);
        var centre = (frame * EngravedNetwork.FrameWidth) + ((EngravedNetwork.FrameWidth - 1) / 2.0);
        return (centre - sight.Edges[frame].Left, centre + sight.Edges[frame].Right);
    }
}

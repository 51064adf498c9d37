using System;
using System.Collections.Immutable;
using System.Globalization;
using System.Linq;
using InscriptionLab.Measures;
using InscriptionLab.Outcomes;
using InscriptionLab.Page.Answers;
using InscriptionLab.Page.Bench;

namespace InscriptionLab.Page.Endpoints;

/// <summary>Checks a correction that the page sent and makes it one of the bench's.</summary>
internal static class CorrectionReader
{
    /// <summary>Longest name of a person.</summary>
    private const int LongestName = 60;

    /// <summary>Most letters that one place can become.</summary>
    private const int MostLetters = 8;

    /// <summary>How far outside the picture a hand-drawn point may lie, in sides of the picture: an outline may leave the frame.</summary>
    private const double Beyond = 2;

    /// <summary>Records the correction.</summary>
    /// <exception cref="InscriptionLabException">It is not understood.</exception>
    internal static Correction Record(Piece piece, PiecePhoto photo, CorrectionRequest asked, DateTimeOffset now)
    {
        var person = Person(asked.Person);
        CorrectionOrigin Made(int id) => new(id, photo.Id, person, now, asked.Basis ?? string.Empty);
        switch (asked.Kind)
        {
            case "tube":
                var (first, second) = (Segment(asked.First, photo), Segment(asked.Second, photo));
                return piece.Correct(id => new Correction.TubeEdges(Made(id), first, second));
            case "line":
                var box = Box(asked.Box, photo);
                return piece.Correct(id => new Correction.LineBox(Made(id), asked.Line ?? string.Create(CultureInfo.InvariantCulture, $"drawn{id}"), box));
            case "line-removed":
                var line = Known(asked.Line, photo);
                return piece.Correct(id => new Correction.LineRemoved(Made(id), line));
            case "letter":
                var (place, index, letters) = (Known(asked.Line, photo), Index(asked.Letter), Letters(asked.Becomes ?? string.Empty));
                return piece.Correct(id => new Correction.LetterRead(Made(id), place, index, asked.Was ?? string.Empty, letters));
            default:
                throw new InscriptionLabException("This kind of correction is not known; load the page anew.");
        }
    }

    private static int Index(int? letter) => letter is >= 0 ? letter.Value : throw new InscriptionLabException("The letter to correct is not named; load the page anew.");

    private static ImmutableArray<string> Letters(string text)
    {
        if (text.EnumerateRunes().Any(System.Text.Rune.IsControl))
        {
            throw new InscriptionLabException("A letter cannot be a control sign; type what is cut.");
        }

        var starts = StringInfo.ParseCombiningCharacters(text);
        return starts.Length <= MostLetters
            ? [.. starts.Select((start, i) => text[start..(i + 1 < starts.Length ? starts[i + 1] : text.Length)])]
            : throw new InscriptionLabException($"One place can become {MostLetters} letters at most; correct the others at their own places.");
    }

    private static string Person(string? given)
    {
        var name = ShownName.Of(given, string.Empty, LongestName);
        return name.Length > 0 ? name : throw new InscriptionLabException("A correction carries the name of who made it; write yours first.");
    }

    private static string Known(string? line, PiecePhoto photo) =>
        line is not null && photo.State.Lines.Any(worked => worked.Id == line) ? line : throw new InscriptionLabException("This line is no longer there; look again at what is shown.");

    private static PixelSegment Segment(double[][]? points, PiecePhoto photo)
    {
        var seen = photo.State.Photo ?? throw new InscriptionLabException("The photo is not read yet; wait a moment.");
        var ends = Points(points, 2, seen.Gray.Width, seen.Gray.Height);
        return new PixelSegment(ends[0], ends[1]);
    }

    private static Quad Box(double[][]? points, PiecePhoto photo)
    {
        var strip = photo.State.Strip ?? throw new InscriptionLabException("There is no strip yet; wait a moment.");
        var corners = Points(points, 4, strip.Image.Width, strip.Image.Height);
        return new Quad(corners[0], corners[1], corners[2], corners[3]);
    }

    private static ImmutableArray<PixelPoint> Points(double[][]? points, int count, int width, int height)
    {
        bool Inside(double value, int side) => double.IsFinite(value) && value >= -Beyond * side && value <= (1 + Beyond) * side;
        return points is not null && points.Length == count && points.All(point => point is { Length: 2 } && Inside(point[0], width) && Inside(point[1], height))
            ? [.. points.Select(point => new PixelPoint(point[0], point[1]))]
            : throw new InscriptionLabException("The points drawn do not lie in the picture; draw them again.");
    }
}

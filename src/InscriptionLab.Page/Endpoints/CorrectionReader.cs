using System;
using System.Collections.Immutable;
using System.Globalization;
using System.Linq;
using InscriptionLab.App.Examining;
using InscriptionLab.Gathering;
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

    /// <summary>Longest answer to a question about the piece, in characters.</summary>
    private const int LongestObservation = 80;

    /// <summary>Shortest half axis of a rim, in pixels: below, no letter on it could be read.</summary>
    private const double SmallestAxis = 10;

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
            case "ring":
                var (rim, opening) = (Ellipse(asked.Rim, photo), Opening(asked.Opening));
                return piece.Correct(id => new Correction.RingRim(Made(id), rim, opening));
            case "line":
                var box = Box(asked.Box, photo);
                return piece.Correct(id => new Correction.LineBox(Made(id), asked.Line ?? string.Create(CultureInfo.InvariantCulture, $"drawn{id}"), box));
            case "line-removed":
                var line = Known(asked.Line, photo.State.Lines);
                return piece.Correct(id => new Correction.LineRemoved(Made(id), line));
            case "letter":
                return Letter(piece, asked, photo.State.Lines, Made);
            default:
                throw new InscriptionLabException("This kind of correction is not known; load the page anew.");
        }
    }

    /// <summary>Records a letter of photos read together, or where their lamps stood; nothing else of them is corrected by hand.</summary>
    /// <exception cref="InscriptionLabException">It is not understood.</exception>
    internal static Correction Record(Piece piece, JointSet set, CorrectionRequest asked, DateTimeOffset now)
    {
        var person = Person(asked.Person);
        CorrectionOrigin Made(int id) => new(id, set.Place, person, now, asked.Basis ?? string.Empty);
        if (asked.Kind == "lamps" && set.Program.Kind == SetKind.Raking)
        {
            var lamps = Lamps(asked.Lamps, set);
            return piece.Correct(id => new Correction.LampsStood(Made(id), lamps));
        }

        return asked.Kind == "letter"
            ? Letter(piece, asked, set.Lines, Made)
            : throw new InscriptionLabException("Of photos read together only letters are corrected; tube, ring and lines are corrected in the single photos.");
    }

    /// <summary>Records an answer about the piece itself.</summary>
    /// <exception cref="InscriptionLabException">The checklist has no such question or answer.</exception>
    internal static Correction Record(Piece piece, SeenRequest asked, DateTimeOffset now)
    {
        var person = Person(asked.Person);
        var (feature, observation) = (asked.Feature ?? string.Empty, (asked.Observation ?? string.Empty).Trim());
        if (!PieceKnowledge.IsAsked(feature) || observation.Length > LongestObservation || observation.EnumerateRunes().Any(System.Text.Rune.IsControl))
        {
            throw new InscriptionLabException($"The checklist has no such question, or the answer is longer than {LongestObservation} characters; load the page anew.");
        }

        Correction.Seen Made(int id) => new(new CorrectionOrigin(id, string.Empty, person, now, string.Empty), feature, observation);

        // The checklist itself says what it takes, before anything is recorded.
        _ = PieceKnowledge.Of([Made(1)]);
        return piece.Correct(Made);
    }

    private static ImmutableArray<(string Sha256, StatedLamp Lamp)> Lamps(double[][]? asked, JointSet set)
    {
        var photos = set.Program.Members;
        return asked is not null && asked.Length == photos.Length && asked.All(lamp => lamp is [>= 0 and <= 360, > 0 and < 90])
            ? [.. photos.Zip(asked, (photo, lamp) => (photo.Photo.Sha256, new StatedLamp(Angle.FromDegrees(lamp[0]), Angle.FromDegrees(lamp[1]))))]
            : throw new InscriptionLabException("Say of every photo where its lamp stood: 0 to 360 degrees clockwise from right, and more than 0 and less than 90 degrees high.");
    }

    private static Correction Letter(Piece piece, CorrectionRequest asked, ImmutableArray<WorkedLine> lines, Func<int, CorrectionOrigin> made)
    {
        var (place, index, letters) = (Known(asked.Line, lines), Index(asked.Letter), Letters(asked.Becomes ?? string.Empty));
        return piece.Correct(id => new Correction.LetterRead(made(id), place, index, asked.Was ?? string.Empty, letters));
    }

    private static PixelEllipse Ellipse(double[]? rim, PiecePhoto photo)
    {
        var seen = photo.State.Photo ?? throw new InscriptionLabException("The photo is not read yet; wait a moment.");
        if (rim is not { Length: 5 } || !rim.All(double.IsFinite) || !(rim[2] >= SmallestAxis && rim[3] >= SmallestAxis))
        {
            throw new InscriptionLabException("The rim drawn is no ellipse that can be laid flat; draw it again.");
        }

        // The first of the two is the longer one wherever the program writes an ellipse.
        var (longer, shorter, degrees) = rim[2] >= rim[3] ? (rim[2], rim[3], rim[4]) : (rim[3], rim[2], rim[4] + 90);
        var centre = Points([[rim[0], rim[1]]], 1, seen.Gray.Width, seen.Gray.Height)[0];
        return longer <= Beyond * Math.Max(seen.Gray.Width, seen.Gray.Height)
            ? new PixelEllipse(centre, PixelLength.FromPixels(longer), PixelLength.FromPixels(shorter), Angle.FromDegrees(degrees))
            : throw new InscriptionLabException("The rim drawn is larger than the photo; draw it again.");
    }

    private static double Opening(double? share) => share is > 0 and < 1 ? share.Value : throw new InscriptionLabException("The opening of a ring is a share of its rim between 0 and 1; draw it inside the rim.");

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

    private static string Known(string? line, ImmutableArray<WorkedLine> lines) =>
        line is not null && lines.Any(worked => worked.Id == line) ? line : throw new InscriptionLabException("This line is no longer there; look again at what is shown.");

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

using System;
using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using InscriptionLab.Measures;

namespace InscriptionLab.Cells;

/// <summary>What the user says of the scale that lies beside the cell, as in <c>checkerboard:5mm</c>, <c>rule:1mm</c>, <c>rule:1/16inch</c>, <c>aruco:10mm</c>, <c>card:99.7mm</c>, <c>id1</c>, <c>disc:23.25mm</c> or <c>points:50mm@210,640/790,655</c>.</summary>
/// <param name="Kind">Kind of scale.</param>
/// <param name="Size">Side of one square of a checkerboard, distance of neighbouring ticks of a rule, side of one marker's black square, length of the scale card's check line as measured, diameter of a disc, distance of two points; null where the user names the kind only.</param>
public sealed record ScaleRequest(ScaleKind Kind, Length? Size)
{
    private const double MillimetresPerCentimetre = 10;

    /// <summary>Marked points must lie farther apart than this, in pixels: a mark is a pixel off, and that is to be less than a tenth.</summary>
    private const double SmallestMarkedPixels = 10;

    /// <summary>Gets points that the user marks in pixels of the upright photo: the two points of a known distance, or one on the disc; else empty.</summary>
    public ImmutableArray<PixelPoint> Marks { get; init; } = [];

    /// <summary>Smallest size that is taken for an honest one.</summary>
    private const double SmallestMillimetres = 0.1;

    /// <summary>Largest size that is taken for an honest one: a scale beside a lens cell is no larger.</summary>
    private const double LargestMillimetres = 500;

    /// <summary>Reads a request as the user writes it: <c>kind</c> or <c>kind:size</c>, the size a number or fraction with mm, cm or inch.</summary>
    /// <param name="text">Text of the user; letters of either case.</param>
    /// <param name="request">The request where the text is understood.</param>
    /// <param name="problem">One sentence saying what is wrong and what to write, where it is not; empty otherwise.</param>
    /// <returns>True where the text is understood.</returns>
    public static bool TryParse(string? text, [NotNullWhen(true)] out ScaleRequest? request, out string problem)
    {
        request = null;
        var parts = (text ?? string.Empty).Trim().Split(':', 2);
        if (!TryKind(parts[0].Trim(), out var kind))
        {
            problem = $"The scale \"{text}\" names no kind of scale: write checkerboard:5mm, rule:1mm, aruco:10mm, card:99.7mm, id1, disc:23.25mm or points:50mm@x,y/x,y with your own size.";
            return false;
        }

        if (kind == ScaleKind.Id1 && parts.Length > 1)
        {
            problem = "The size of a bank card is fixed by its standard (85.60 mm by 53.98 mm): write id1 alone.";
            return false;
        }

        if (kind is ScaleKind.Disc or ScaleKind.Points)
        {
            return TryMarked(kind, parts.Length == 1 ? string.Empty : parts[1], out request, out problem);
        }

        if (parts.Length == 1)
        {
            request = new ScaleRequest(kind, null);
            problem = string.Empty;
            return true;
        }

        if (!TryLength(parts[1], out var size, out problem))
        {
            return false;
        }

        request = new ScaleRequest(kind, size);
        return true;
    }

    /// <summary>Reads a length as the user writes it: a number or fraction above zero followed by mm, cm, inch or in.</summary>
    /// <param name="text">For example <c>5mm</c>, <c>0.5 cm</c>, <c>1/16inch</c>.</param>
    /// <param name="length">The length where the text is understood.</param>
    /// <param name="problem">One sentence saying what is wrong, where it is not; empty otherwise.</param>
    /// <returns>True where the text is understood.</returns>
    public static bool TryLength(string? text, out Length length, out string problem) => TryLength(text, SmallestMillimetres, LargestMillimetres, out length, out problem);

    /// <summary>Reads a length as the user writes it, between two bounds.</summary>
    /// <param name="text">For example <c>5mm</c>, <c>0.5 cm</c>, <c>1/16inch</c>.</param>
    /// <param name="smallest">Smallest length in millimetres that is taken for an honest one.</param>
    /// <param name="largest">Largest length in millimetres that is taken for an honest one.</param>
    /// <param name="length">The length where the text is understood.</param>
    /// <param name="problem">One sentence saying what is wrong, where it is not; empty otherwise.</param>
    /// <returns>True where the text is understood.</returns>
    public static bool TryLength(string? text, double smallest, double largest, out Length length, out string problem)
    {
        length = default;
        var trimmed = (text ?? string.Empty).Trim();
        var digits = 0;
        while (digits < trimmed.Length && (char.IsAsciiDigit(trimmed[digits]) || trimmed[digits] is '.' or '/' or '-' or '+'))
        {
            digits++;
        }

        var unit = trimmed[digits..].Trim();
        if (!TryNumber(trimmed[..digits], out var number))
        {
            problem = $"The size \"{text}\" is no number: write for example 5mm, 0.5cm or 1/16inch.";
            return false;
        }

        double millimetres;
        if (unit.Equals("mm", StringComparison.OrdinalIgnoreCase))
        {
            millimetres = number;
        }
        else if (unit.Equals("cm", StringComparison.OrdinalIgnoreCase))
        {
            millimetres = number * MillimetresPerCentimetre;
        }
        else if (unit.Equals("inch", StringComparison.OrdinalIgnoreCase) || unit.Equals("in", StringComparison.OrdinalIgnoreCase))
        {
            millimetres = Length.FromInches(number).Millimetres;
        }
        else
        {
            problem = unit.Length == 0
                ? $"The size \"{text}\" has no unit: write mm, cm or inch after the number."
                : $"The unit \"{unit}\" is not known: write mm, cm or inch after the number.";
            return false;
        }

        if (!(millimetres >= smallest && millimetres <= largest))
        {
            problem = string.Create(CultureInfo.InvariantCulture, $"The size \"{text}\" is not between {smallest} mm and {largest} mm: check the number and its unit.");
            return false;
        }

        length = Length.FromMillimetres(millimetres);
        problem = string.Empty;
        return true;
    }

    /// <summary>Reads what stands behind <c>disc:</c> or <c>points:</c>: a size, then points behind an @.</summary>
    private static bool TryMarked(ScaleKind kind, string text, [NotNullWhen(true)] out ScaleRequest? request, out string problem)
    {
        request = null;
        var parts = text.Split('@', 2);
        var example = kind == ScaleKind.Disc ? "disc:23.25mm, or disc:23.25mm@820,410 with a point on it" : "points:50mm@210,640/790,655";
        if (parts[0].Trim().Length == 0)
        {
            problem = $"A {(kind == ScaleKind.Disc ? "disc needs its diameter" : "pair of points needs its distance")}: write for example {example}.";
            return false;
        }

        if (!TryLength(parts[0], out var size, out problem))
        {
            return false;
        }

        var marks = ImmutableArray.CreateBuilder<PixelPoint>();
        foreach (var mark in parts.Length == 1 ? [] : parts[1].Split('/'))
        {
            var numbers = mark.Split(',');
            if (numbers.Length != 2 || !TryPlace(numbers[0], out var x) || !TryPlace(numbers[1], out var y))
            {
                problem = $"\"{mark}\" is no point: write x,y in pixels of the upright photo, for example {example}.";
                return false;
            }

            marks.Add(new PixelPoint(x, y));
        }

        var fits = kind == ScaleKind.Disc ? marks.Count <= 1 : marks.Count == 2 && marks[0].DistanceTo(marks[1]).Pixels >= SmallestMarkedPixels;
        request = fits ? new ScaleRequest(kind, size) { Marks = marks.ToImmutable() } : null;
        problem = fits ? string.Empty
            : kind == ScaleKind.Disc ? $"One point on the disc is enough: write {example}."
            : $"Two points apart by ten pixels or more are needed: write for example {example}.";
        return fits;
    }

    private static bool TryPlace(string text, out double place) =>
        double.TryParse(text.Trim(), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out place) && double.IsFinite(place);

    private static bool TryKind(string text, out ScaleKind kind)
    {
        foreach (var candidate in Enum.GetValues<ScaleKind>())
        {
            if (text.Equals(candidate.ToString(), StringComparison.OrdinalIgnoreCase))
            {
                kind = candidate;
                return true;
            }
        }

        kind = default;
        return false;
    }

    private static bool TryNumber(string text, out double number)
    {
        const NumberStyles Style = NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign;
        number = 0;
        var parts = text.Split('/');
        if (parts.Length > 2 || !double.TryParse(parts[0], Style, CultureInfo.InvariantCulture, out number))
        {
            return false;
        }

        if (parts.Length == 2)
        {
            if (!double.TryParse(parts[1], Style, CultureInfo.InvariantCulture, out var divisor) || divisor == 0)
            {
                return false;
            }

            number /= divisor;
        }

        return double.IsFinite(number);
    }
}

using System;
using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using InscriptionLab.Measures;

namespace InscriptionLab.Cells;

/// <summary>What the user says of the scale that lies beside the cell, as in <c>checkerboard:5mm</c>, <c>rule:1mm</c>, <c>rule:1/16inch</c>, <c>aruco:10mm</c> or <c>card:99.7mm</c>.</summary>
/// <param name="Kind">Kind of scale.</param>
/// <param name="Size">Side of one square of a checkerboard, distance of neighbouring ticks of a rule, side of one marker's black square, length of the scale card's check line as measured; null where the user names the kind only.</param>
public sealed record ScaleRequest(ScaleKind Kind, Length? Size)
{
    private const double MillimetresPerCentimetre = 10;

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
            problem = $"The scale \"{text}\" names no kind of scale: write checkerboard:5mm, rule:1mm, aruco:10mm or card:99.7mm with your own size.";
            return false;
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
                ? $"The size \"{text}\" has no unit: write mm, cm or inch behind the number."
                : $"The unit \"{unit}\" is not known: write mm, cm or inch behind the number.";
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

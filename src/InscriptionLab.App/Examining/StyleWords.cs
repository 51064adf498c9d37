using System.Linq;
using InscriptionLab.Readings;

namespace InscriptionLab.App.Examining;

/// <summary>What is said of lines in different styles, and what that is worth: next to nothing by itself.</summary>
internal static class StyleWords
{
    /// <summary>Letters from which a line's style counts: fewer may be an abbreviation or a number.</summary>
    private const int FewestLetters = 5;

    /// <summary>Probability from which a style counts as seen, and up to which the other line's counts as ruled out.</summary>
    private const double Seen = 0.9;
    private const double RuledOut = 0.05;

    /// <summary>Gives the sentence for the first two lines that are surely in different styles; null where none are.</summary>
    internal static string? Of(Reading reading)
    {
        var sure = reading.Lines.Where(line => !line.Style.IsEmpty && line.Style[0].Probability.Value >= Seen && line.Letters.Count(letter => !letter.IsSpace) >= FewestLetters).ToList();
        foreach (var one in sure)
        {
            if (sure.Find(other => Of(one, other.Style[0].Style) <= RuledOut && Of(other, one.Style[0].Style) <= RuledOut) is { } unlike)
            {
                return $"'{one.Text}' is cut in {one.Style[0].Style}, '{unlike.Text}' in {unlike.Style[0].Style}. Engravers often used several styles on one piece, and lines added later are another cause (common practice). This is an observation and no proof.";
            }
        }

        return null;
    }

    private static double Of(LineReading line, string style) => line.Style.Where(candidate => candidate.Style == style).Sum(candidate => candidate.Probability.Value);
}

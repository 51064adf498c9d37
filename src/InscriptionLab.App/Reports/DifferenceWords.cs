using InscriptionLab.Comparison;
using static InscriptionLab.App.Reports.Figures;

namespace InscriptionLab.App.Reports;

/// <summary>Says in words how a reading differs from a form at one place.</summary>
internal static class DifferenceWords
{
    internal static string For(LetterDifference difference)
    {
        var sure = Percent(difference.Probability);
        return (difference.Attested, difference.Read) switch
        {
            (_, "?") => $"{Shown(difference.Attested)} cannot be seen: the letter at this place is not legible.",
            ("", var read) => $"{Shown(read)} is one letter too many ({sure} sure).",
            (var attested, "") => $"{Shown(attested)} is missing ({sure} sure).",
            (var attested, var read) when difference.Kind == DifferenceKind.Case => $"{read} is cut in the other case than {attested} ({sure} sure).",
            (var attested, var read) => $"{Shown(read)} stands in place of {Shown(attested)} ({sure} sure).",
        };
    }

    private static string Shown(string letter) => letter == " " ? "a space" : letter;
}

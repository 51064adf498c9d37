using InscriptionLab.Cataloguing;
using InscriptionLab.Evidence;

namespace InscriptionLab.Exchange;

/// <summary>What a person saw on an object, in words.</summary>
public static class ObservationWords
{
    /// <summary>Gives question and answer, without underscores: "tube material: pasteboard".</summary>
    public static string Of(ObservationEntry seen)
    {
        System.ArgumentNullException.ThrowIfNull(seen);
        return $"{Plain(seen.Feature)}: {Plain(seen.Answer)}";
    }

    /// <summary>Gives the same with its years, what they rest on, and who saw it when.</summary>
    internal static string Whole(ObservationEntry seen) =>
        $"{Of(seen)}{(seen.IsDated ? $" ({Years(seen)}; {seen.Source})" : string.Empty)}, seen by {seen.By} ({ExchangeText.Day(seen.MadeAt)})";

    /// <summary>Gives the years: "1790 or earlier".</summary>
    public static string Years(ObservationEntry seen)
    {
        System.ArgumentNullException.ThrowIfNull(seen);
        return new DateInterval(seen.FromYear, seen.ToYear).ToString();
    }

    /// <summary>Gives a word of the checklist as words: "outer_mm" is "outer, mm".</summary>
    public static string Plain(string word)
    {
        System.ArgumentNullException.ThrowIfNull(word);
        return word.EndsWith("_mm", System.StringComparison.Ordinal) ? word[..^3].Replace('_', ' ') + ", mm" : word.Replace('_', ' ').Replace('-', ' ');
    }
}

using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Comparison;
using InscriptionLab.Findings;
using InscriptionLab.Readings;
using InscriptionLab.References;

namespace InscriptionLab.Evidence;

/// <summary>Looks for a second house among the letters that the form of the finding leaves over: maker and retailer, or two makers.</summary>
/// <param name="comparer">The list's comparer.</param>
internal sealed class SecondNameFinder(Comparer comparer)
{
    /// <summary>Fewest letters of a name that is only near: shorter ones lie near to too many words of a street or a trade.</summary>
    private const int FewestLettersOfANearName = 6;

    private readonly JudgeOptions _judging = new();

    internal SecondName? Find(Reading reading, Finding finding)
    {
        if (finding.Leading is not { Span: { } span, Form: var leading })
        {
            return null;
        }

        var rest = Without(reading, span);
        return rest.Lines.IsEmpty
            ? null
            : comparer.Compare(rest).Nearest
                .Where(nearest => nearest.Form.Status == AttestationStatus.Attested && !IsRelated(nearest.Form, leading))
                .Select(nearest => new FormStanding(nearest, _judging))
                .Where(form => form.IsConfirmed || (form.IsNear && form.Nearest.Letters >= FewestLettersOfANearName && form.Words.AbsentWords.IsEmpty))
                .OrderByDescending(form => form.IsConfirmed)
                .Select(form => new SecondName(form.Nearest, form.IsConfirmed))
                .FirstOrDefault();
    }

    /// <summary>Lines that the span takes whole are left out; what is left of a line that it takes in part stands without its frames, which are of the whole line.</summary>
    private static Reading Without(Reading reading, MatchedSpan span) => reading with
    {
        Lines = [.. reading.Lines.Select((line, index) => Without(line, index, span)).Where(line => line.Letters.Any(letter => !letter.IsSpace))],
    };

    private static LineReading Without(LineReading line, int index, MatchedSpan span)
    {
        ImmutableArray<Letter> left = [.. line.Letters.Where((_, at) => !span.Holds(index, at))];
        return left.Length == line.Letters.Length ? line : line with { Letters = left, Posteriors = null };
    }

    private static bool IsRelated(ReferenceForm form, ReferenceForm leading) =>
        form.Maker == leading.Maker || form.SuccessorOf == leading.Maker || leading.SuccessorOf == form.Maker;
}

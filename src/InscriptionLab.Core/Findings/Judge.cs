using System;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Comparison;
using InscriptionLab.Readings;

namespace InscriptionLab.Findings;

/// <summary>
/// Says what a comparison amounts to. The rules, in order:
/// no letter read: nothing-read;
/// no form of the list near what was read: undecided;
/// an attested form laid over the words, letter by letter the same, each letter readable: agrees;
/// every attested form near the same words excluded by at least one letter: differs;
/// a form listed as a copy or reproduction, letter by letter the same, and no attested form left open: differs, naming the status;
/// anything else: undecided, naming the letters. A form of which whole words were not read is left open, not excluded; so is a form whose
/// letter is missing before the first letter of a line, where a reader's box may have cut it off.
/// </summary>
public sealed class Judge
{
    private readonly JudgeOptions _options;

    /// <summary>Makes a judge.</summary>
    /// <param name="options">Thresholds; null for the defaults.</param>
    /// <exception cref="ArgumentOutOfRangeException">A threshold is outside its range.</exception>
    public Judge(JudgeOptions? options = null)
    {
        _options = options ?? new JudgeOptions();
        _options.Validate();
    }

    /// <summary>Gives the finding.</summary>
    /// <param name="comparison">Reading and list, compared.</param>
    public Finding Decide(ReadingComparison comparison)
    {
        ArgumentNullException.ThrowIfNull(comparison);
        var account = new FindingAccount(comparison, _options);
        if (!comparison.Reading.Lines.SelectMany(line => line.Letters).Any(letter => !letter.IsSpace && letter.Character != Letter.Unreadable))
        {
            return account.NothingRead();
        }

        var near = comparison.Nearest.Select(nearest => new FormStanding(nearest, _options)).Where(form => form.IsNear).ToImmutableArray();
        return near.FirstOrDefault(form => form.IsAttested || form.IsSpeltAlike) is { } leading
            ? Decide(account, leading, near)
            : account.NothingNear();
    }

    private static Finding Decide(FindingAccount account, FormStanding leading, ImmutableArray<FormStanding> near)
    {
        var sameWords = near.Where(form => form.Nearest.Span!.Overlaps(leading.Nearest.Span!)).ToImmutableArray();
        if (leading is { IsAttested: true, IsConfirmed: true })
        {
            return account.Agrees(leading, sameWords);
        }

        var stillOpen = sameWords.FirstOrDefault(form => form.IsAttested && !form.IsExcluded && !form.IsPartOf(leading));
        var isCopy = !leading.IsAttested && leading.IsConfirmed;
        return stillOpen is null && (isCopy || leading is { IsAttested: true, IsExcluded: true })
            ? account.Differs(leading, sameWords)
            : account.Undecided(stillOpen ?? leading, sameWords);
    }
}

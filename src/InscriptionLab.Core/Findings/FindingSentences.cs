using System.Collections.Generic;
using System.Collections.Immutable;
using System.Globalization;
using System.Linq;
using InscriptionLab.Comparison;
using InscriptionLab.Measures;
using InscriptionLab.References;

namespace InscriptionLab.Findings;

/// <summary>Sentences of a finding: neutral, each to be checked by the user in the photo or in the list.</summary>
internal sealed class FindingSentences(ReadingComparison comparison, JudgeOptions options)
{
    private const int MostNamed = 3;

    private readonly LetterSentences _letters = new(options);

    internal static ImmutableArray<string> Cautions { get; } =
    [
        "This finding is one piece of evidence beside others, not a certificate; it says nothing of who sold the piece or what they knew.",
        "The reading was made without the list and is not changed by it. " + VerbalScale.Note,
        "Do not polish, fill or scratch the lettering to read it better, and do not force caps, cells or draws.",
        "Never look at the Sun, or photograph it, through a telescope.",
    ];

    internal static string CutButUnreadable(int lines) =>
        lines == 1 ? "Something is cut on one line, but no letter of it can be read." : string.Create(CultureInfo.InvariantCulture, $"Something is cut on {lines} lines, but no letter of it can be read.");

    internal static string AbsentWord(string word) => $"The word '{word}' of the form was not read on the piece; the form without it is not in the list.";

    internal IEnumerable<string> Against(IReadOnlyList<LetterDifference> differences) => _letters.Against(differences);

    internal IEnumerable<string> Open(IReadOnlyList<LetterDifference> places) => _letters.Open(places);

    internal IEnumerable<string> AtLineEnds(IEnumerable<LetterDifference> against) => against
        .Where(difference => difference.Read.Length == 0 && difference.LetterIndex == comparison.Reading.Lines[difference.LineIndex].Letters.Length)
        .Select(difference => difference.LineIndex + 1)
        .Distinct()
        .Select(line => string.Create(CultureInfo.InvariantCulture, $"Whether the box round line {line} leaves out a letter at its end: look at the straightened picture."));

    internal IEnumerable<string> LinesRead() => comparison.Reading.Lines
        .Select((line, index) => (line.Text, Number: index + 1))
        .Where(line => line.Text.Trim().Length > 0)
        .Select(line => string.Create(CultureInfo.InvariantCulture, $"Line {line.Number} is read '{line.Text}'."));

    internal string Read(NearestForm nearest)
    {
        var span = nearest.Span!;
        var text = string.Join(" / ", Enumerable.Range(span.FirstLine, span.LastLine - span.FirstLine + 1).Select(line => Text(line, span).Trim()));
        return span.FirstLine == span.LastLine
            ? string.Create(CultureInfo.InvariantCulture, $"Line {span.FirstLine + 1} is read '{text}' where it was laid beside the list.")
            : string.Create(CultureInfo.InvariantCulture, $"Lines {span.FirstLine + 1} to {span.LastLine + 1} are read '{text}' where they were laid beside the list.");
    }

    internal static string SpeltAlike(NearestForm nearest) =>
        $"Every letter is that of the form {Row(nearest)}."
        + (nearest.IsOtherCase ? " Capitals and small letters are other than in the list, word for word, which is the same spelling." : string.Empty);

    internal string LeastCertain(NearestForm nearest) => _letters.Sure(nearest.Agreements.MinBy(agreement => agreement.Log10Ratio)!);

    internal static string NearestAttested(NearestForm nearest) => $"The nearest form is {Row(nearest)}.";

    internal static string ListedAs(NearestForm nearest) => $"The spelling is listed: {Row(nearest)}.";

    internal static string AlsoListed(NearestForm nearest) => $"The same letters are also listed as {Row(nearest)}.";

    internal static string ShorterForm(NearestForm shorter, NearestForm longer) =>
        $"The shorter form {Row(shorter)} is part of what was read, but the words with it are nearer to '{longer.Form.Form}'.";

    internal string NoneNear(NearestForm nearest) => string.Create(
        CultureInfo.InvariantCulture,
        $"No form in the list is near: the nearest, {Row(nearest)}, is {nearest.Distance:0.0} letters away, more than {options.NearLimit:0.##} for each of its {nearest.Letters} letters.");

    internal static string TooManyDoubts(NearestForm nearest) => string.Create(
        CultureInfo.InvariantCulture,
        $"No single letter is in doubt, but together the doubts leave a probability of {nearest.Agreement.Value:0.00} that all {nearest.Agreements.Length} are as in the form.");

    internal IEnumerable<string> WholeForm(NearestForm nearest)
    {
        if (nearest.LogLikelihoodRatio is { } ratio)
        {
            var log10 = EvidenceMath.Capped(ratio / System.Math.Log(10), options.MaximumLog10Ratio);
            yield return $"With the whole form '{nearest.Form.Form}' in place of what was read, the picture is {RatioWords.Times(log10, options.MaximumLog10Ratio)} times less probable.";
        }
    }

    internal static IEnumerable<string> NotSpelling(NearestForm nearest)
    {
        string[] marks = [.. nearest.Differences.Where(difference => difference.Kind is DifferenceKind.Punctuation or DifferenceKind.Spacing).Select(Mark).Distinct()];
        if (marks.Length > 0)
        {
            yield return $"Stops and spaces differ ({string.Join(", ", marks)}), which is not counted as spelling.";
        }

        string[] shapes = [.. nearest.Differences.Where(difference => difference.Kind is DifferenceKind.Case or DifferenceKind.LetterForm).Select(difference => $"'{difference.Read}' for '{difference.Attested}'").Distinct()];
        if (shapes.Length > 0)
        {
            yield return $"Letters are the same in another case or shape ({string.Join(", ", shapes)}), which is not counted as spelling.";
        }
    }

    internal IEnumerable<string> OtherWords(NearestForm nearest)
    {
        var span = nearest.Span!;
        var before = Text(span.FirstLine, 0, span.FirstLetter);
        var after = Text(span.LastLine, span.LastLetter + 1, int.MaxValue);
        string[] others = [.. new[] { before, after }.Where(text => text.Any(char.IsLetterOrDigit)).Select(text => $"'{text.Trim()}'")];
        if (others.Length > 0)
        {
            yield return $"{string.Join(" and ", others)} on the same line {(others.Length > 1 ? "are" : "is")} not part of the form and {(others.Length > 1 ? "were" : "was")} not compared.";
        }
    }

    internal ImmutableArray<LetterDifference> WeakestLetters() => Weakest(comparison.Reading.Lines.SelectMany((line, lineIndex) => line.Letters
        .Select((letter, index) => new LetterDifference(letter.Character, letter.Character, Probability.From(1 - letter.Probability.Value), lineIndex, index))
        .Where(letter => letter.Read != " " && 1 - letter.Probability.Value < options.ReadableProbability)));

    internal static ImmutableArray<LetterDifference> WeakestLetters(NearestForm nearest) => Weakest(nearest.Agreements);

    internal ImmutableArray<string> Retake(IReadOnlyCollection<LetterDifference> open)
    {
        var advice = ImmutableArray.CreateBuilder<string>();
        var small = comparison.Reading.Lines.Select(line => line.Line.InkHeight.Pixels).Where(height => height < options.SmallInkHeight).DefaultIfEmpty(double.PositiveInfinity).Min();
        if (double.IsFinite(small))
        {
            advice.Add(string.Create(CultureInfo.InvariantCulture, $"Go nearer: the lettering is about {small:0} pixels high in this photo, and {options.SmallInkHeight:0} or more are needed."));
        }

        if (open.Count > 0)
        {
            var places = open.Take(MostNamed).Select(place => string.Create(CultureInfo.InvariantCulture, $"letter {place.LetterIndex + 1} of line {place.LineIndex + 1}")).Distinct();
            advice.Add($"Photograph {string.Join(", ", places)} once more with a lamp low from one side, then from another, the tube turned so that the letter faces the camera.");
        }
        else
        {
            advice.Add("Photograph the piece once more, sharp, the lettering facing the camera, with a lamp low from one side.");
        }

        return advice.ToImmutable();
    }

    private static ImmutableArray<LetterDifference> Weakest(IEnumerable<LetterDifference> letters) =>
        [.. letters.OrderByDescending(letter => letter.Probability.Value).Take(MostNamed).OrderBy(letter => letter.LineIndex).ThenBy(letter => letter.LetterIndex)];

    private static string Mark(LetterDifference difference) => difference switch
    {
        { Read: "" } => $"no {Named(difference.Attested)}",
        { Attested: "" } => $"a {Named(difference.Read)} more",
        _ => $"'{difference.Read}' for '{difference.Attested}'",
    };

    private static string Named(string mark) => mark == " " ? "space" : $"'{mark}'";

    private static string Row(NearestForm nearest)
    {
        var status = nearest.Form.Status switch
        {
            AttestationStatus.PeriodCopy => "listed as a period copy after",
            AttestationStatus.Reproduction => "listed as a mark of modern decorative pieces naming",
            _ => "attested for",
        };
        var source = nearest.Form.Source is { } given ? $"; source: {given}" : string.Empty;
        return $"'{nearest.Form.Form}', {status} {nearest.Form.Maker}{source}";
    }

    private string Text(int line, MatchedSpan span) => Text(
        line,
        line == span.FirstLine ? span.FirstLetter : 0,
        line == span.LastLine ? span.LastLetter + 1 : int.MaxValue);

    private string Text(int line, int from, int to) =>
        string.Concat(comparison.Reading.Lines[line].Letters.Where((_, index) => index >= from && index < to).Select(letter => letter.Character));
}

using System;
using System.Collections.Generic;
using System.Globalization;
using System.Linq;
using System.Text;

namespace InscriptionLab.Assess.Readers;

/// <summary>How the readers did: styles, letter probabilities, and what the second reader's word is worth.</summary>
internal sealed class ReaderTable
{
    private const int Bins = 10;

    private readonly List<(string True, string Said)> _styles = [];
    private readonly List<(double Probability, bool Right, bool? Agrees)> _letters = [];
    private (int Right, int Letters) _second;

    internal void AddStyle(string truth, string said) => _styles.Add((truth, said));

    internal void AddLetter(double probability, bool right, bool? agrees) => _letters.Add((probability, right, agrees));

    internal void AddSecond(int right, int letters) => _second = (_second.Right + right, _second.Letters + letters);

    internal string ToMarkdown()
    {
        var text = new StringBuilder();
        var said = _styles.SelectMany(pair => new[] { pair.True, pair.Said }).Distinct().Order(StringComparer.Ordinal).ToList();
        Line(text, $"| style cut | {string.Join(" | ", said.Select(style => "said: " + style))} | right |");
        Line(text, $"|---|{string.Concat(Enumerable.Repeat("---|", said.Count))}---|");
        foreach (var row in _styles.GroupBy(pair => pair.True, StringComparer.Ordinal).OrderBy(row => row.Key, StringComparer.Ordinal))
        {
            Line(text, $"| {row.Key} | {string.Join(" | ", said.Select(style => row.Count(pair => pair.Said == style)))} | {Share(row.Count(pair => pair.Said == row.Key), row.Count())} |");
        }

        text.Append('\n');
        Line(text, $"| probability stated | letters | mean stated | right |");
        Line(text, $"|---|---|---|---|");
        foreach (var bin in _letters.GroupBy(letter => Math.Min(Bins - 1, (int)(letter.Probability * Bins))).OrderBy(bin => bin.Key))
        {
            Line(text, $"| {(double)bin.Key / Bins:0.0} to {(bin.Key + 1.0) / Bins:0.0} | {bin.Count()} | {bin.Average(letter => letter.Probability):0.000} | {Share(bin.Count(letter => letter.Right), bin.Count())} |");
        }

        text.Append('\n');
        var heard = _letters.Where(letter => letter.Agrees is not null).ToList();
        Line(text, $"| second reader | letters of the first | of these right | mean probability stated |");
        Line(text, $"|---|---|---|---|");
        foreach (var (name, of) in new[] { ("agrees", heard.Where(letter => letter.Agrees == true).ToList()), ("differs or reads nothing", heard.Where(letter => letter.Agrees == false).ToList()) })
        {
            Line(text, $"| {name} | {of.Count} | {Share(of.Count(letter => letter.Right), of.Count)} | {(of.Count == 0 ? 0 : of.Average(letter => letter.Probability)):0.000} |");
        }

        text.Append('\n');
        Line(text, $"The second reader alone: {Share(_second.Right, _second.Letters)} of its letters right.");
        return text.ToString();
    }

    private static string Share(int part, int whole) => whole == 0 ? "-" : Invariant($"{100.0 * part / whole:0.0} % ({part} of {whole})");

    private static void Line(StringBuilder text, FormattableString line) => text.Append(Invariant(line)).Append('\n');

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}

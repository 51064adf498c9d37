using System.Collections.Generic;
using System.IO;
using System.Linq;
using System.Threading;
using InscriptionLab.App;
using InscriptionLab.App.Demo;
using InscriptionLab.Assess.Scores;
using InscriptionLab.Assess.Truths;

namespace InscriptionLab.Assess.Readers;

/// <summary>Runs the whole examination on each lettered tube of a folder and holds its readers against the truth: styles, probabilities, the second reader.</summary>
internal sealed class ReaderAssessor(Composition composition, string folder, TextWriter progress)
{
    internal ReaderTable Run(IEnumerable<TruthPhoto> truths, CancellationToken cancel)
    {
        var examiner = composition.Examiner(DemoReferences.Load());
        var table = new ReaderTable();
        foreach (var truth in truths.Where(truth => truth.Kind is "tube" or "raking" && truth.Lines.Length > 0))
        {
            progress.WriteLine(truth.File);
            var reading = examiner.Examine(Path.Combine(folder, truth.File), cancel).Reading;
            if (truth.Style is { } style && !reading.Style.IsEmpty)
            {
                table.AddStyle(style, reading.Style[0].Style);
            }

            Judge(table, string.Concat(truth.Lines).Replace(" ", string.Empty, System.StringComparison.Ordinal), reading);
        }

        return table;
    }

    /// <summary>Pairs the letters read, and beside them those of the second reader, with the letters cut.</summary>
    private static void Judge(ReaderTable table, string cut, Readings.Reading reading)
    {
        var letters = reading.Lines.SelectMany(line => line.Letters.Select((letter, i) => (Letter: letter, Agrees: line.Second is { } second ? second.Agrees[i] : (bool?)null))).Where(pair => !pair.Letter.IsSpace).ToList();
        var pairs = EditDistance.Pairs(cut, string.Concat(letters.Select(pair => pair.Letter.Character)));
        var runes = cut.EnumerateRunes().Select(rune => rune.ToString()).ToList();
        foreach (var (pair, at) in letters.Zip(pairs))
        {
            table.AddLetter(pair.Letter.Probability.Value, at >= 0 && runes[at] == pair.Letter.Character, pair.Agrees);
        }

        foreach (var line in reading.Lines.Where(line => line.Second is not null))
        {
            table.AddSecond(Found(cut, line.Second!.Text), line.Second.Text.Count(c => c != ' '));
        }
    }

    /// <summary>Letters of a line that stand at some place of what is cut, in order.</summary>
    private static int Found(string cut, string read)
    {
        var bare = read.Replace(" ", string.Empty, System.StringComparison.Ordinal);
        var runes = bare.EnumerateRunes().Select(rune => rune.ToString()).ToList();
        var whole = cut.EnumerateRunes().Select(rune => rune.ToString()).ToList();
        return EditDistance.Pairs(cut, bare).Zip(runes).Count(pair => pair.First >= 0 && whole[pair.First] == pair.Second);
    }
}

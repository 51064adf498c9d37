using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using BenchmarkDotNet.Attributes;
using InscriptionLab.Comparison;
using InscriptionLab.Imaging;
using InscriptionLab.Lines;
using InscriptionLab.Measures;
using InscriptionLab.Readings;
using InscriptionLab.References;
using InscriptionLab.Strips;

namespace InscriptionLab.Benchmarks;

/// <summary>The nearest forms in a list of 100,000, all drawn from syllables, for one line and for three.</summary>
[MemoryDiagnoser]
public class SearchBenchmarks
{
    private const int Forms = 100_000;

    private static readonly string[] Syllables = "ba bri cal dor fen gru hath kes lor mar nel os pel qua ren sto tol um ver wex ard dle".Split(' ');

    private Comparer _comparer = null!;
    private Reading _one = null!;
    private Reading _three = null!;
    private Reading _doubtful = null!;
    private Reading _unreadable = null!;
    private Reading _threeUnreadable = null!;

    [GlobalSetup]
    public void Prepare()
    {
        var random = new Random(7);
        string Word(int syllables) => string.Concat(Enumerable.Range(0, syllables).Select(_ => Syllables[random.Next(Syllables.Length)]));
        string Name(int syllables) => char.ToUpperInvariant(Word(1)[0]) + Word(syllables);
        string Form() => random.Next(4) switch
        {
            0 => $"Thos. {Name(3)}",
            1 => $"{Name(3)} & Son",
            2 => $"{Name(2)} & {Name(3)}",
            _ => Name(4),
        };
        var forms = new HashSet<string>(StringComparer.Ordinal);
        while (forms.Count < Forms)
        {
            forms.Add(Form());
        }

        _comparer = new Comparer(new ReferenceList("syllables", string.Empty, [.. forms.Select(form => new ReferenceForm(form, form, AttestationStatus.Attested))]));
        var name = forms.First(form => form.Contains('&', StringComparison.Ordinal));
        _one = Typed(name);
        _doubtful = new Reading("typed", [Line(name, at => at % 3 == 0 ? 0.7 : 0.95)], []);
        _unreadable = new Reading("typed", [Line($"{name[..3]}?{name[4..]}", _ => 0.95)], []);
        _threeUnreadable = new Reading("typed", [Line($"{name[..3]}?{name[4..6]}??{name[8..]}", _ => 0.95)], []);
        _three = Typed(name, "14, Cawdry Lane", "BRACKHAVEN");
    }

    [Benchmark]
    public object One_line() => _comparer.Compare(_one);

    [Benchmark]
    public object Three_lines() => _comparer.Compare(_three);

    /// <summary>Every third letter read with a probability of 0.7.</summary>
    [Benchmark]
    public object One_doubtful_line() => _comparer.Compare(_doubtful);

    /// <summary>One letter that cannot be read.</summary>
    [Benchmark]
    public object One_line_with_a_gap() => _comparer.Compare(_unreadable);

    /// <summary>Three letters that cannot be read, two of them side by side.</summary>
    [Benchmark]
    public object One_line_with_three_gaps() => _comparer.Compare(_threeUnreadable);

    private static Reading Typed(params string[] lines) => new("typed", [.. lines.Select(line => Line(line, _ => 0.95))], []);

    private static LineReading Line(string text, Func<int, double> sure)
    {
        ImmutableArray<Letter> letters = [.. text.Select((letter, at) => new Letter(letter.ToString(), Probability.From(letter == '?' ? 0.2 : sure(at)), [new LetterCandidate(letter == 'e' ? "c" : "e", Probability.From(letter == '?' ? 0.1 : 0.6 * (1 - sure(at))))], default, default))];
        var line = new LetteringLine(new GrayImage(1, 1, [0]), new FlatStripMap(1), default, default, new LineDirection(default, false, false), PixelLength.FromPixels(40), Probability.One);
        return new LineReading(line, letters, Probability.From(0.9), null);
    }
}

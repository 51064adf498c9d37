using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.Globalization;
using System.Linq;
using InscriptionLab.Measures;
using InscriptionLab.Readings;

namespace InscriptionLab.Page.Bench;

/// <summary>Applies the corrections of lines and letters, in the order in which they were made, to what the reader read.</summary>
/// <param name="readAt">Reads one line again in the box of a correction; null where nothing can be read there.</param>
internal sealed class HandLines(Func<Correction.LineBox, LineReading?> readAt)
{
    /// <summary>Names of letters that one correction may add; above the letters of any line.</summary>
    private const int NamesOfCorrection = 1000;

    private readonly List<WorkedLine> _lines = [];
    private readonly HashSet<int> _setAside = [];

    /// <summary>Gets the corrections that could not be applied, because what they were made on is gone.</summary>
    internal ImmutableHashSet<int> SetAside => [.. _setAside];

    /// <summary>Gives the lines with every correction applied.</summary>
    /// <param name="found">Lines as the reader read them.</param>
    /// <param name="strip">Name of the strip they were read from.</param>
    /// <param name="corrections">Corrections of this photo.</param>
    internal ImmutableArray<WorkedLine> Apply(ImmutableArray<LineReading> found, string strip, IEnumerable<Correction> corrections)
    {
        _lines.AddRange(found.Select((line, index) => WorkedLine.Found($"line{index + 1}", line, null, strip)));
        foreach (var correction in corrections)
        {
            var done = correction switch
            {
                Correction.LineBox box => box.Basis == strip && Redraw(box, strip),
                Correction.LineRemoved removed => removed.Basis == strip && _lines.RemoveAll(line => line.Id == removed.LineId) > 0,
                Correction.LetterRead letter => Read(letter),
                _ => true,
            };
            if (!done)
            {
                _setAside.Add(correction.Id);
            }
        }

        return [.. _lines];
    }

    /// <summary>Says in a sentence how many letters persons read; nothing where none.</summary>
    internal static ImmutableArray<string> Sentences(ImmutableArray<WorkedLine> lines)
    {
        var marks = lines.SelectMany(line => line.Letters).OfType<HandMark>().ToList();
        var people = string.Join(", ", marks.Select(mark => mark.Person).Distinct(StringComparer.Ordinal));
        return marks.Count == 0
            ? []
            : [string.Create(CultureInfo.InvariantCulture, $"{marks.Count} {(marks.Count == 1 ? "letter was" : "letters were")} read by a person ({people}); the finding takes them as read.")];
    }

    private bool Redraw(Correction.LineBox box, string strip)
    {
        if (readAt(box) is not { } reading)
        {
            return false;
        }

        var index = _lines.FindIndex(line => line.Id == box.LineId);
        var was = index < 0 ? string.Empty : _lines[index].Reading.Text;
        var drawn = WorkedLine.Found(box.LineId, reading, new HandMark(box.Person, box.At, was), $"{strip}/{box.Id}");
        if (index < 0)
        {
            _lines.Add(drawn);
        }
        else
        {
            _lines[index] = drawn;
        }

        return true;
    }

    private bool Read(Correction.LetterRead correction)
    {
        var index = _lines.FindIndex(line => line.Id == correction.LineId && line.Basis == correction.Basis);
        if (index < 0)
        {
            return false;
        }

        var line = _lines[index];
        var letters = line.Reading.Letters;
        var at = line.Ids.IndexOf(correction.LetterId);
        if (at < 0 || letters[at].Character != correction.Was)
        {
            return false;
        }

        // What the program read stays to be seen, however often persons correct it.
        var was = letters[at];
        var mark = new HandMark(correction.Person, correction.At, line.Letters[at]?.Was ?? Described(was));
        var read = correction.Characters.Select((character, place) => Part(was, character, place, correction.Characters.Length)).ToList();
        _lines[index] = line with
        {
            // What the network saw frame by frame stands against what a person says; from here on the person's letters count.
            Reading = line.Reading with
            {
                Letters = letters.RemoveAt(at).InsertRange(at, read),
                Posteriors = null,
                Second = null,
            },
            Letters = line.Letters.RemoveAt(at).InsertRange(at, read.Select(_ => (HandMark?)mark)),
            Ids = line.Ids.RemoveAt(at).InsertRange(at, read.Select((_, place) => place == 0 ? correction.LetterId : (correction.Id * NamesOfCorrection) + place)),
        };
        return true;
    }

    private static string Described(Letter letter) => string.Create(CultureInfo.InvariantCulture, $"{letter.Character} ({letter.Probability.Value:P0})");

    /// <summary>One of several letters that share a box from left to right.</summary>
    private static Letter Part(Letter letter, string character, int place, int count) => letter with
    {
        Character = character,
        Probability = Probability.One,
        Alternatives = [],
        InPhoto = Part(letter.InPhoto, place, count),
        InCrop = Part(letter.InCrop, place, count),
    };

    private static Quad Part(Quad quad, int place, int count)
    {
        PixelPoint At(PixelPoint left, PixelPoint right, int step)
        {
            var share = (double)step / count;
            return new PixelPoint(left.X + ((right.X - left.X) * share), left.Y + ((right.Y - left.Y) * share));
        }

        return new Quad(
            At(quad.TopLeft, quad.TopRight, place),
            At(quad.TopLeft, quad.TopRight, place + 1),
            At(quad.BottomLeft, quad.BottomRight, place + 1),
            At(quad.BottomLeft, quad.BottomRight, place));
    }
}

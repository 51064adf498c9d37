using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Readings;

namespace InscriptionLab.Comparison;

/// <summary>
/// One line, or several adjacent ones joined, over which forms are laid. A form may begin and end at the edge of a word (punctuation set
/// aside), and inside a word where small letters meet a capital ("HathersedgeLONDON"), as readers lose spaces.
/// </summary>
internal sealed class LetterWindow
{
    /// <summary>Fewest letters that a word run together with another must have to be taken as a word.</summary>
    private const int ShortestJoinedWord = 3;

    private LetterWindow(ImmutableArray<WindowPlace> places)
    {
        Places = places;
        CanStart = [.. Enumerable.Range(0, places.Length + 1).Select(IsStart)];
        CanEnd = [.. Enumerable.Range(0, places.Length + 1).Select(IsEnd)];
    }

    internal ImmutableArray<WindowPlace> Places { get; }

    /// <summary>Gets, for each position between places, whether a form may begin there.</summary>
    internal ImmutableArray<bool> CanStart { get; }

    /// <summary>Gets, for each position between places, whether a form may end there.</summary>
    internal ImmutableArray<bool> CanEnd { get; }

    internal int LineCount => Places[^1].Line - Places[0].Line + 1;

    /// <summary>Gives all windows of a reading: each line with letters, and runs of adjacent ones.</summary>
    internal static IEnumerable<LetterWindow> Of(Reading reading, ComparerOptions options)
    {
        var lines = reading.Lines.Select((line, index) => line.Letters.Select((letter, at) => new WindowPlace(letter, new PlaceWeights(letter, options), index, at)).ToArray()).ToArray();
        for (var first = 0; first < lines.Length; first++)
        {
            var places = new List<WindowPlace>();
            for (var last = first; last < lines.Length && last - first < options.MaximumJoinedLines && lines[last].Any(place => !place.IsGap); last++)
            {
                if (last > first)
                {
                    places.Add(new WindowPlace(null, null, last - 1, lines[last - 1].Length));
                }

                places.AddRange(lines[last]);
                yield return new LetterWindow([.. places]);
            }
        }
    }

    /// <summary>Gives the doubt of the letters on either side of a position, for a letter that may have been overlooked there: the larger one.</summary>
    internal double DoubtAround(int position)
    {
        double DoubtOf(int place) => place >= 0 && place < Places.Length && Places[place].Weights is { IsSpace: false } weights ? weights.Doubt : 0;
        return double.Max(DoubtOf(position - 1), DoubtOf(position));
    }

    private bool IsStart(int position)
    {
        var at = position;
        while (at > 0 && Places[at - 1].IsPunctuation)
        {
            at--;
        }

        return at == 0 || Places[at - 1].IsGap || IsJoint(position);
    }

    private bool IsEnd(int position)
    {
        var at = position;
        while (at < Places.Length && Places[at].IsPunctuation)
        {
            at++;
        }

        return at == Places.Length || Places[at].IsGap || IsJoint(position);
    }

    private bool IsJoint(int position) =>
        position > 0 && position < Places.Length
        && LetterFold.IsLower(Places[position - 1].Read) && LetterFold.IsUpper(Places[position].Read)
        && Places.Take(position).Reverse().TakeWhile(place => !place.IsGap).Count() >= ShortestJoinedWord
        && Places.Skip(position).TakeWhile(place => !place.IsGap).Count() >= ShortestJoinedWord;
}

using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Cataloguing;
using InscriptionLab.Measures;

namespace InscriptionLab.Exchange;

/// <summary>One line as it is handed on.</summary>
/// <param name="Number">Number of the line in its catalogue.</param>
/// <param name="Position">Its place, from 0.</param>
/// <param name="Read">What the program read.</param>
/// <param name="Letters">The letters, spaces left out.</param>
/// <param name="Correction">What a user reads instead, by whom and when; null where no correction stands.</param>
/// <param name="Picture">The line laid flat, as a grey PNG; empty where none was kept.</param>
/// <param name="Boxes">Boxes of the letters in that picture.</param>
public sealed record ExchangeLine(
    long Number,
    int Position,
    string Read,
    ImmutableArray<RecordLetter> Letters,
    LineCorrection? Correction,
    ImmutableArray<byte> Picture,
    ImmutableArray<ImmutableArray<double>> Boxes)
{
    /// <summary>Gets the letters that have a place in the photo.</summary>
    public ImmutableArray<RecordLetter> Placed => [.. Letters.Where(letter => letter.Quad.Length == 4)];

    /// <summary>Gets the corners of the line in the photo, top-left first as the reader sees it; empty where no letter has a place.</summary>
    public ImmutableArray<PixelPoint> Outline => Placed is [var first, .., var last] ? [first.Quad[0], last.Quad[1], last.Quad[2], first.Quad[3]]
        : Placed is [var only] ? only.Quad : [];

    /// <summary>Gets the letters word by word, as the spaces of the text part them.</summary>
    public ImmutableArray<ImmutableArray<RecordLetter>> Words
    {
        get
        {
            var words = ImmutableArray.CreateBuilder<ImmutableArray<RecordLetter>>();
            var next = 0;
            foreach (var word in Read.Split(' ', System.StringSplitOptions.RemoveEmptyEntries))
            {
                var length = System.Math.Min(new System.Globalization.StringInfo(word).LengthInTextElements, Letters.Length - next);
                if (length > 0)
                {
                    words.Add(Letters.Slice(next, length));
                    next += length;
                }
            }

            return words.ToImmutable();
        }
    }
}

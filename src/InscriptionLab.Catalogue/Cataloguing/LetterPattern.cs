using System.Collections.Generic;
using System.Collections.Immutable;
using System.Linq;
using InscriptionLab.Outcomes;

namespace InscriptionLab.Cataloguing;

/// <summary>
/// A word with unknown letters, sought anywhere in a line. A letter that the reading could not see ("?") matches every letter: it may be that one.
/// </summary>
internal sealed class LetterPattern
{
    private const string AnyOne = "?";
    private const string AnyMany = "*";
    private const string Unread = "?";
    private readonly ImmutableArray<string> _parts;

    /// <summary>Makes the pattern.</summary>
    /// <param name="text"><c>?</c> or <c>.</c> for any one letter, <c>*</c> for any letters; everything else stands for itself.</param>
    /// <exception cref="InscriptionLabException">The pattern says nothing.</exception>
    internal LetterPattern(string text)
    {
        _parts = [.. Folding.Of(text).Trim().Select(letter => letter switch { '.' => AnyOne, _ => letter.ToString() })];
        if (_parts.All(part => part is AnyOne or AnyMany))
        {
            throw new InscriptionLabException("The pattern has no letter that is known: give at least one, for example \"Br?ckw.ll\".");
        }
    }

    /// <summary>Says whether the pattern lies somewhere in a line.</summary>
    /// <param name="line">What may stand at each place, folded; several candidates where alternatives count.</param>
    internal bool IsIn(IReadOnlyList<IReadOnlyList<string>> line)
    {
        // The set of pattern positions that can be reached, moved on place by place (Thompson's simulation): no input makes it slow.
        var reached = new bool[_parts.Length + 1];
        for (var place = 0; place <= line.Count; place++)
        {
            reached[0] = true;
            for (var part = 0; part < _parts.Length; part++)
            {
                reached[part + 1] |= reached[part] && _parts[part] == AnyMany;
            }

            if (reached[^1])
            {
                return true;
            }

            if (place == line.Count)
            {
                break;
            }

            var next = new bool[reached.Length];
            for (var part = 0; part < _parts.Length; part++)
            {
                if (reached[part])
                {
                    next[part] |= _parts[part] == AnyMany;
                    next[part + 1] |= _parts[part] != AnyMany && Fits(_parts[part], line[place]);
                }
            }

            reached = next;
        }

        return false;
    }

    private static bool Fits(string part, IReadOnlyList<string> candidates) =>
        candidates.Any(candidate => candidate == part || (candidate == Unread && part != " ") || (part == AnyOne && candidate != " "));
}

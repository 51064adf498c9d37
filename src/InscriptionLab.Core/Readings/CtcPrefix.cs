namespace InscriptionLab.Readings;

/// <summary>
/// The first letters of a text against a line: for each frame, the log-probability of all paths up to and including it that spell
/// exactly these letters, apart by whether the frame shows a blank or the last letter. This is the forward variable of Graves et al.
/// (ICML 2006, section 4.1) laid out letter by letter, so that texts with a common beginning share the work.
/// </summary>
internal sealed class CtcPrefix
{
    private CtcPrefix(int frames)
    {
        OnBlank = new double[frames];
        OnLetter = new double[frames];
        OnEither = new double[frames];
    }

    /// <summary>Gets, for each frame, paths that end on a blank.</summary>
    internal double[] OnBlank { get; }

    /// <summary>Gets, for each frame, paths that end on the last letter.</summary>
    internal double[] OnLetter { get; }

    /// <summary>Gets, for each frame, all paths: the sum of the two, kept because every longer text asks for it.</summary>
    internal double[] OnEither { get; }

    /// <summary>Gets the class of the last letter, or -1 where there is none.</summary>
    internal int Last { get; private set; } = -1;

    /// <summary>Gets the log-probability that these letters are the whole text.</summary>
    internal double LogProbability => OnEither.Length > 0
        ? OnEither[^1]
        : Last < 0 ? 0 : LogSpace.Never;

    /// <summary>Gives the paths that have spelt nothing yet.</summary>
    internal static CtcPrefix Empty(CtcMatrix matrix)
    {
        var prefix = new CtcPrefix(matrix.Frames);
        var blank = matrix.Of(matrix.Blank);
        var sum = 0.0;
        for (var frame = 0; frame < blank.Length; frame++)
        {
            sum += blank[frame];
            prefix.OnBlank[frame] = sum;
            prefix.OnLetter[frame] = LogSpace.Never;
            prefix.OnEither[frame] = sum;
        }

        return prefix;
    }

    /// <summary>Gives an unfilled column for <see cref="Fill"/>.</summary>
    internal static CtcPrefix Unfilled(CtcMatrix matrix) => new(matrix.Frames);

    /// <summary>Gives these letters with one more behind them.</summary>
    internal CtcPrefix Extend(CtcMatrix matrix, int next)
    {
        var longer = new CtcPrefix(matrix.Frames);
        longer.Fill(matrix, this, next);
        return longer;
    }

    /// <summary>Gives the log-probability of having spelt these letters before <paramref name="frame"/>, where the letter that begins there is <paramref name="next"/>.</summary>
    internal double Before(int frame, int next) => frame == 0
        ? (Last < 0 ? 0 : LogSpace.Never)
        : next == Last ? OnBlank[frame - 1] : OnEither[frame - 1];

    /// <summary>Makes this the column of <paramref name="shorter"/> with one letter behind it.</summary>
    internal void Fill(CtcMatrix matrix, CtcPrefix shorter, int next)
    {
        Last = next;
        var blank = matrix.Of(matrix.Blank);
        var letter = matrix.Of(next);
        var onEither = LogSpace.Never;
        var onLetter = LogSpace.Never;
        for (var frame = 0; frame < letter.Length; frame++)
        {
            var onBlank = onEither + blank[frame];
            onLetter = LogSpace.Add(onLetter, shorter.Before(frame, next)) + letter[frame];
            onEither = LogSpace.Add(onBlank, onLetter);
            OnBlank[frame] = onBlank;
            OnLetter[frame] = onLetter;
            OnEither[frame] = onEither;
        }
    }
}

namespace InscriptionLab.Readings;

/// <summary>
/// The last letters of a text against a line: for each frame, the log-probability of everything from that frame on, given that the frame
/// shows the first of these letters, or the blank before it. The backward variable of Graves et al. (ICML 2006, section 4.1).
/// </summary>
internal sealed class CtcSuffix
{
    private CtcSuffix(int frames, int first)
    {
        OnBlank = new double[frames];
        OnLetter = new double[frames];
        First = first;
    }

    /// <summary>Gets, for each frame, the future from a blank before the first of these letters.</summary>
    internal double[] OnBlank { get; }

    /// <summary>Gets, for each frame, the future from the first of these letters.</summary>
    internal double[] OnLetter { get; }

    /// <summary>Gets the class of the first letter, or -1 where there is none.</summary>
    internal int First { get; }

    /// <summary>Gives the futures in which nothing more is spelt.</summary>
    internal static CtcSuffix Empty(CtcMatrix matrix)
    {
        var suffix = new CtcSuffix(matrix.Frames, -1);
        var blank = matrix.Of(matrix.Blank);
        var sum = 0.0;
        for (var frame = matrix.Frames - 1; frame >= 0; frame--)
        {
            sum += blank[frame];
            suffix.OnBlank[frame] = sum;
            suffix.OnLetter[frame] = LogSpace.Never;
        }

        return suffix;
    }

    /// <summary>Gives these letters with one more before them.</summary>
    internal CtcSuffix Precede(CtcMatrix matrix, int letterClass)
    {
        var longer = new CtcSuffix(matrix.Frames, letterClass);
        var blank = matrix.Of(matrix.Blank);
        var letter = matrix.Of(letterClass);
        var onBlank = LogSpace.Never;
        var onLetter = LogSpace.Never;
        for (var frame = matrix.Frames - 1; frame >= 0; frame--)
        {
            var wait = LogSpace.Add(onBlank, onLetter) + blank[frame];
            onLetter = LogSpace.Add(onLetter, After(frame, letterClass)) + letter[frame];
            onBlank = wait;
            longer.OnBlank[frame] = onBlank;
            longer.OnLetter[frame] = onLetter;
        }

        return longer;
    }

    /// <summary>Gives the log-probability of these letters behind <paramref name="frame"/>, the last frame of a letter of class <paramref name="previous"/>.</summary>
    internal double After(int frame, int previous)
    {
        if (frame == OnBlank.Length - 1)
        {
            return First < 0 ? 0 : LogSpace.Never;
        }

        return previous == First ? OnBlank[frame + 1] : LogSpace.Add(OnBlank[frame + 1], OnLetter[frame + 1]);
    }
}

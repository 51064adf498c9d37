namespace InscriptionLab.Vision.Native;

/// <summary>Places in a discrete Fourier transform and in what is correlated by it: one period, in which what lies beyond its half stands for a negative wave or shift.</summary>
internal static class DftIndex
{
    /// <summary>Gives the wave or shift for which a place stands.</summary>
    /// <param name="index">Place, 0 up to the period.</param>
    /// <param name="period">Places in all.</param>
    internal static int Signed(int index, int period) => index > period / 2 ? index - period : index;
}

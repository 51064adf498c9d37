using System;

namespace InscriptionLab.Outcomes;

/// <summary>Something outside the program is not as it must be (a file, a model, a list). The message is one clear sentence saying what is wrong and what to do.</summary>
public sealed class InscriptionLabException : Exception
{
    /// <summary>Makes the exception without a sentence.</summary>
    public InscriptionLabException()
    {
    }

    /// <summary>Makes the exception.</summary>
    /// <param name="message">One sentence for the user.</param>
    public InscriptionLabException(string message)
        : base(message)
    {
    }

    /// <summary>Makes the exception.</summary>
    /// <param name="message">One sentence for the user.</param>
    /// <param name="innerException">The cause.</param>
    public InscriptionLabException(string message, Exception innerException)
        : base(message, innerException)
    {
    }

    /// <summary>Gets a value indicating whether the same may succeed later with nothing changed, because the machine had too much to do.</summary>
    public bool MayPass { get; init; }
}

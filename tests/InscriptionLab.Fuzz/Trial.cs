using System;
using System.Globalization;
using System.Linq;
using InscriptionLab.Outcomes;

namespace InscriptionLab.Fuzz;

/// <summary>One input given to one parser. What may come of it: a result, or the project's own exception with a sentence a person can use.</summary>
public static class Trial
{
    /// <summary>Most memory that one input may make the parser ask for, over the whole run.</summary>
    /// <value>512 MiB; inputs are at most 1 MiB.</value>
    private const long MostBytes = 512L * 1024 * 1024;

    /// <summary>Runs it.</summary>
    /// <param name="target">The parser.</param>
    /// <param name="input">The bytes.</param>
    /// <returns>The sentence of a refusal; null where the input was taken.</returns>
    /// <exception cref="InvalidOperationException">The refusal is no sentence, or the memory is out of all proportion. Whatever else is thrown is the parser's.</exception>
    public static string? Run(Action<byte[]> target, byte[] input)
    {
        ArgumentNullException.ThrowIfNull(target);
        var before = GC.GetAllocatedBytesForCurrentThread();
        try
        {
            target(input);
            var used = GC.GetAllocatedBytesForCurrentThread() - before;
            return used <= MostBytes ? null : throw new InvalidOperationException(string.Create(CultureInfo.InvariantCulture, $"The input costs {used / 1024 / 1024} MiB."));
        }
        catch (InscriptionLabException refusal)
        {
            return IsSentence(refusal.Message) ? refusal.Message : throw new InvalidOperationException($"The refusal is no sentence: \"{refusal.Message}\"", refusal);
        }
    }

    /// <summary>A sentence says something, ends, and shows no inside of the program.</summary>
    private static bool IsSentence(string message) =>
        message.Any(char.IsLetter)
        && (message[^1] is '.' || message.Contains('\n', StringComparison.Ordinal))
        && !message.Contains("\n   at ", StringComparison.Ordinal);
}

using System;
using System.Security.Cryptography;
using System.Text;

namespace InscriptionLab.Page.Guarding;

/// <summary>The secrets of one run of the page; new at every start and never written down.</summary>
internal sealed class PageKeys
{
    private const int SecretBytes = 24;

    /// <summary>Gets what a page of ours sends with everything that changes something; another site cannot know it.</summary>
    internal string FormToken { get; } = NewSecret();

    /// <summary>Gets what lets another machine in.</summary>
    internal string DoorKey { get; } = NewSecret();

    /// <summary>Compares two secrets in a time that does not depend on where they differ.</summary>
    internal static bool Same(string? given, string secret) =>
        given is not null && CryptographicOperations.FixedTimeEquals(Encoding.UTF8.GetBytes(given), Encoding.UTF8.GetBytes(secret));

    private static string NewSecret() => Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(SecretBytes));
}

using System;
using System.Security.Cryptography;
using System.Text;

namespace InscriptionLab.Cataloguing;

/// <summary>SHA-256 hashes in lower-case hexadecimal digits.</summary>
internal static class Fingerprint
{
    /// <summary>Gives the hash of an entry's photo, kind, versions and hands: the same work on the same photo is kept once.</summary>
    internal static string Of(CatalogueEntry entry)
    {
        var machine = Of(entry.Kind, entry.Photo.Sha256, entry.Versions);
        return entry.Hands.Length == 0 ? machine : OfText($"{machine}\n{entry.Hands}");
    }

    /// <summary>Gives the hash of a photo, a kind of work and versions.</summary>
    internal static string Of(string kind, string sha256, EntryVersions versions) => OfText(string.Join('\n', kind, sha256, versions.Program, versions.Model, versions.List, versions.ListSha256));

    /// <summary>Gives the hash of a text in UTF-8.</summary>
    internal static string OfText(string text) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)));
}

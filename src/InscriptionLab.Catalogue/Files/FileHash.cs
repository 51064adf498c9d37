using System;
using System.IO;
using System.Security.Cryptography;

namespace InscriptionLab.Files;

/// <summary>The SHA-256 of a file's bytes, by which files are known whatever they are called.</summary>
public static class FileHash
{
    /// <summary>Gives the hash as 64 lower-case hexadecimal digits.</summary>
    /// <param name="file">The file.</param>
    /// <exception cref="IOException">The file cannot be read.</exception>
    /// <exception cref="UnauthorizedAccessException">The file may not be opened.</exception>
    public static string Of(string file)
    {
        using var stream = File.OpenRead(file);
        return Convert.ToHexStringLower(SHA256.HashData(stream));
    }
}

using System;
using System.IO;

namespace InscriptionLab.Fuzz;

/// <summary>A folder of this process for parsers that take the name of a file.</summary>
internal static class Scratch
{
    private static readonly Lazy<string> Folder = new(Make);

    /// <summary>Gives the path of a name in the folder.</summary>
    internal static string PathOf(string name) => Path.Combine(Folder.Value, name);

    /// <summary>Writes a file.</summary>
    /// <returns>Its path.</returns>
    internal static string Write(string name, ReadOnlySpan<byte> content)
    {
        var file = PathOf(name);
        File.WriteAllBytes(file, content);
        return file;
    }

    private static string Make()
    {
        var folder = Directory.CreateTempSubdirectory("fuzz-").FullName;
        AppDomain.CurrentDomain.ProcessExit += (_, _) => Directory.Delete(folder, recursive: true);
        return folder;
    }
}

using System;
using System.IO;
using System.Linq;

namespace InscriptionLab.App.Tests;

/// <summary>A folder of a test's own, gone afterwards.</summary>
internal sealed class TemporaryFolder : IDisposable
{
    internal string Path { get; } = Directory.CreateTempSubdirectory("inscriptionlab-test-").FullName;

    internal string[] Names => [.. Directory.GetFileSystemEntries(Path).Select(entry => System.IO.Path.GetFileName(entry)).Order(StringComparer.Ordinal)];

    public void Dispose() => Directory.Delete(Path, recursive: true);

    internal string File(string name) => System.IO.Path.Combine(Path, name);
}

using System;
using System.IO;
using Microsoft.Data.Sqlite;

namespace InscriptionLab.Catalogue.Tests.Cataloguing;

/// <summary>A folder of one test, removed after it.</summary>
internal sealed class Scratch : IDisposable
{
    internal Scratch()
    {
        Folder = Directory.CreateTempSubdirectory("inscriptionlab-").FullName;
    }

    internal string Folder { get; }

    public void Dispose()
    {
        SqliteConnection.ClearAllPools();
        Directory.Delete(Folder, recursive: true);
    }

    internal string At(params ReadOnlySpan<string> parts) => Path.Combine([Folder, .. parts]);
}

using System;
using System.IO;

namespace InscriptionLab.Benchmarks;

/// <summary>Where the sample photos and the launcher are.</summary>
internal static class Samples
{
    internal static string Root { get; } = FindRoot();

    internal static string Folder => Path.Combine(Root, "sample-images");

    private static string FindRoot()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "InscriptionLab.sln")))
        {
            folder = folder.Parent;
        }

        return folder?.FullName ?? throw new InvalidOperationException("The benchmarks run inside the project's folder.");
    }
}

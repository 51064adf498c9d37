using System;
using System.Collections.Immutable;
using System.IO;
using System.Linq;
using InscriptionLab.Assess.Truths;

namespace InscriptionLab.App.Tests;

/// <summary>The photos that come with the project, by name, with what is known of them.</summary>
internal static class SampleImages
{
    internal const string RomanTransposed = "roman-transposed.jpg";
    internal const string RomanThreeLines = "roman-three-lines.jpg";
    internal const string Script = "script.jpg";
    internal const string Blank = "blank.jpg";
    internal const string NoTube = "no-tube.jpg";
    internal const string Mirrored = "mirrored.jpg";
    internal const string CellCheckerboard = "cell-checkerboard.jpg";

    /// <summary>Gets the root of the project: the folder that holds the solution.</summary>
    internal static string Root { get; } = FindRoot();

    internal static string Folder => Path.Combine(Root, "sample-images");

    internal static ImmutableArray<TruthPhoto> Truths { get; } = TruthFolder.Read(Folder);

    internal static string PathOf(string name) => Path.Combine(Folder, name);

    internal static TruthPhoto TruthOf(string name) => Truths.Single(truth => truth.File == name);

    private static string FindRoot()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "InscriptionLab.sln")))
        {
            folder = folder.Parent;
        }

        return folder?.FullName ?? throw new InvalidOperationException("The tests run inside the project's folder.");
    }
}

using System;
using System.Collections.Generic;
using System.IO;

namespace InscriptionLab.Surveys;

/// <summary>
/// Walks through folders and the folders inside them, each one once however many links lead to it, so that a link to a folder above ends. What the name of
/// begins with a dot is passed over; a folder that may not be opened is noted.
/// </summary>
internal sealed class FolderWalk
{
    private static readonly EnumerationOptions OneLevel = new() { IgnoreInaccessible = false };

    private readonly HashSet<string> _seen = new(StringComparer.Ordinal);
    private readonly List<string> _unopened = [];

    /// <summary>Gets the folders that could not be opened.</summary>
    internal IReadOnlyList<string> Unopened => _unopened;

    /// <summary>Gives the files under a folder, in no order.</summary>
    internal IEnumerable<string> Files(string folder)
    {
        var waiting = new Stack<(string Path, string Real)>();
        waiting.Push((folder, Real(folder, Path.GetFullPath(folder))));
        while (waiting.TryPop(out var next))
        {
            if (!_seen.Add(next.Real) || Open(next.Path) is not { } entries)
            {
                continue;
            }

            foreach (var entry in entries)
            {
                if (Directory.Exists(entry))
                {
                    waiting.Push((entry, Real(entry, Path.Combine(next.Real, Path.GetFileName(entry)))));
                }
                else
                {
                    yield return entry;
                }
            }
        }
    }

    private List<string>? Open(string folder)
    {
        try
        {
            return [.. Directory.EnumerateFileSystemEntries(folder, "*", OneLevel)];
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            _unopened.Add(folder);
            return null;
        }
    }

    private static string Real(string folder, string otherwise)
    {
        try
        {
            return new DirectoryInfo(folder).ResolveLinkTarget(returnFinalTarget: true)?.FullName ?? otherwise;
        }
        catch (IOException)
        {
            // A link that leads round in a circle is no folder and is not opened.
            return otherwise;
        }
    }
}

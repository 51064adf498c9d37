using System;
using System.Collections.Generic;
using System.Collections.Immutable;
using System.IO;
using System.Linq;
using InscriptionLab.Outcomes;

namespace InscriptionLab.Surveys;

/// <summary>Lists the photos of folders, in the order of their names, with the object that each shows.</summary>
internal static class FileLister
{
    /// <summary>Lists.</summary>
    /// <returns>The files, how many others lie beside them, and the folders that could not be opened.</returns>
    /// <exception cref="InscriptionLabException">A folder is not there, or none holds a photo.</exception>
    internal static (ImmutableArray<SurveyFile> Files, int Others, ImmutableArray<string> Unopened) List(SurveyRequest request, SurveyOptions options)
    {
        var sidecar = request.ObjectsFile is { } file ? ObjectSidecar.Read(file) : null;
        var files = new List<SurveyFile>();
        var others = 0;
        var walk = new FolderWalk();
        var results = Path.GetFullPath(request.Out);
        foreach (var folder in request.Folders)
        {
            if (!Directory.Exists(folder))
            {
                throw new InscriptionLabException($"{folder}: there is no such folder; name the folder that holds the photos.");
            }

            foreach (var path in walk.Files(folder))
            {
                if (Path.GetFullPath(path).StartsWith(results + Path.DirectorySeparatorChar, StringComparison.Ordinal))
                {
                    continue;
                }

                if (options.Endings.Contains(Path.GetExtension(path), StringComparer.OrdinalIgnoreCase))
                {
                    files.Add(Describe(folder, path, sidecar));
                }
                else
                {
                    others++;
                }
            }
        }

        if (files.Count == 0)
        {
            throw new InscriptionLabException(walk.Unopened is [var closed, ..]
                ? $"{closed}: the folder cannot be opened; check that you may open it."
                : $"{string.Join(", ", request.Folders)}: no photo was found; photos end in {string.Join(", ", options.Endings)}.");
        }

        return ([.. files.DistinctBy(found => found.Path, StringComparer.Ordinal).OrderBy(found => found.Path, StringComparer.Ordinal)], others, [.. walk.Unopened.Order(StringComparer.Ordinal)]);
    }

    private static SurveyFile Describe(string folder, string path, ObjectSidecar? sidecar)
    {
        var inside = Path.GetRelativePath(folder, path);
        var named = sidecar?.Find(path, inside);

        // Photos that lie together in a folder of their own show one object; photos that lie loose show one object each.
        var parent = Path.GetDirectoryName(inside);
        var key = named?.ObjectKey ?? (string.IsNullOrEmpty(parent) ? inside : parent);
        var (bytes, changedAt) = Facts(path);
        return new SurveyFile(path, key, named?.OfferedAs, bytes, changedAt);
    }

    /// <summary>A file that has gone since, or whose name is no text, stays on the list and is found unusable when its turn comes.</summary>
    private static (long Bytes, long ChangedAt) Facts(string path)
    {
        try
        {
            var facts = new FileInfo(path);
            return (facts.Length, facts.LastWriteTimeUtc.Ticks);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            return (0, 0);
        }
    }
}

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
    /// <returns>The files, and how many others lie beside them.</returns>
    /// <exception cref="InscriptionLabException">A folder is not there, or none holds a photo.</exception>
    internal static (ImmutableArray<SurveyFile> Files, int Others) List(SurveyRequest request, SurveyOptions options)
    {
        var sidecar = request.ObjectsFile is { } file ? ObjectSidecar.Read(file) : null;
        var files = new List<SurveyFile>();
        var others = 0;
        var results = Path.GetFullPath(request.Out);
        foreach (var folder in request.Folders)
        {
            if (!Directory.Exists(folder))
            {
                throw new InscriptionLabException($"{folder}: there is no such folder; name the folder that holds the photos.");
            }

            foreach (var path in Directory.EnumerateFiles(folder, "*", new EnumerationOptions { RecurseSubdirectories = true, IgnoreInaccessible = true }))
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
            throw new InscriptionLabException($"{string.Join(", ", request.Folders)}: no photo was found; photos end in {string.Join(", ", options.Endings)}.");
        }

        return ([.. files.DistinctBy(found => found.Path, StringComparer.Ordinal).OrderBy(found => found.Path, StringComparer.Ordinal)], others);
    }

    private static SurveyFile Describe(string folder, string path, ObjectSidecar? sidecar)
    {
        var facts = new FileInfo(path);
        var inside = Path.GetRelativePath(folder, path);
        var named = sidecar?.Find(path, inside);

        // Photos that lie together in a folder of their own show one object; photos that lie loose show one object each.
        var parent = Path.GetDirectoryName(inside);
        var key = named?.ObjectKey ?? (string.IsNullOrEmpty(parent) ? inside : parent);
        return new SurveyFile(path, key, named?.OfferedAs, facts.Length, facts.LastWriteTimeUtc.Ticks);
    }
}

using System;
using System.IO;
using System.Linq;

namespace InscriptionLab.Files;

/// <summary>
/// Writes folders whole or not at all: beside their place first, then moved there. A program killed in the middle leaves nothing under the folder's name, and
/// what it left beside it is cleared away by the next one. Into a folder that is there already, file after file is moved, each whole, over those of the same name.
/// </summary>
public sealed class WholeFolder : IDisposable
{
    private readonly string _folder;
    private bool _finished;

    /// <summary>Begins a folder.</summary>
    /// <param name="folder">Where it shall lie in the end.</param>
    public WholeFolder(string folder)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(folder);
        _folder = Path.TrimEndingDirectorySeparator(Path.GetFullPath(folder));
        Beside = Directory.Exists(_folder) ? Path.Combine(_folder, WholeFile.Unfinished) : _folder + WholeFile.Unfinished;
        if (Directory.Exists(Beside))
        {
            Directory.Delete(Beside, recursive: true);
        }

        Directory.CreateDirectory(Beside);
    }

    /// <summary>Gets the folder to write into until it is finished.</summary>
    public string Beside { get; }

    /// <summary>Says whether a folder holds anything but what an interrupted program left.</summary>
    public static bool IsInUse(string folder) => Directory.Exists(folder) && Directory.EnumerateFileSystemEntries(folder).Any(entry => Path.GetFileName(entry) != WholeFile.Unfinished);

    /// <summary>Moves what was written to its place.</summary>
    /// <exception cref="IOException">It cannot be moved.</exception>
    public void Finish()
    {
        if (Directory.Exists(_folder))
        {
            MoveInto(Beside, _folder);
            Directory.Delete(Beside, recursive: true);
        }
        else
        {
            Directory.Move(Beside, _folder);
        }

        _finished = true;
    }

    /// <summary>Clears away what was not finished.</summary>
    public void Dispose()
    {
        if (_finished)
        {
            return;
        }

        try
        {
            Directory.Delete(Beside, recursive: true);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            // The first fault says more than this one.
        }
    }

    /// <summary>Moves folders before files, so that a list of contents or check sums comes after what it lists.</summary>
    private static void MoveInto(string from, string into)
    {
        foreach (var folder in Directory.GetDirectories(from).Order(StringComparer.Ordinal))
        {
            var target = Path.Combine(into, Path.GetFileName(folder));
            if (Directory.Exists(target))
            {
                MoveInto(folder, target);
            }
            else
            {
                Directory.Move(folder, target);
            }
        }

        foreach (var file in Directory.GetFiles(from).Order(StringComparer.Ordinal))
        {
            File.Move(file, Path.Combine(into, Path.GetFileName(file)), overwrite: true);
        }
    }
}

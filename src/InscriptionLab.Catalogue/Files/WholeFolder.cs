using System;
using System.IO;
using System.Linq;
using InscriptionLab.Outcomes;

namespace InscriptionLab.Files;

/// <summary>
/// Writes folders whole or not at all: beside their place first, then moved there. A program killed in the middle leaves nothing under the folder's name, and
/// what it left beside it, known by a mark inside, is cleared away by the next one. Into a folder that is there already, file after file is moved, each whole, over those of the same name.
/// </summary>
public sealed class WholeFolder : IDisposable
{
    /// <summary>A file of this name says that a folder was begun here and may be cleared away.</summary>
    internal const string Mark = ".begun-by-inscriptionlab";

    private readonly string _folder;
    private readonly string _begun;
    private bool _finished;

    /// <summary>Begins a folder.</summary>
    /// <param name="folder">Where it shall lie in the end.</param>
    /// <exception cref="InscriptionLabException">Another folder lies where this one has to be written first.</exception>
    public WholeFolder(string folder)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(folder);
        _folder = Path.TrimEndingDirectorySeparator(Path.GetFullPath(folder));
        _begun = Directory.Exists(_folder) ? Path.Combine(_folder, WholeFile.Unfinished) : _folder + WholeFile.Unfinished;
        if (Directory.Exists(_begun))
        {
            if (!File.Exists(Path.Combine(_begun, Mark)) && Directory.EnumerateFileSystemEntries(_begun).Any())
            {
                throw new InscriptionLabException($"{_begun}: this folder is in the way, since what is written goes there until it is whole; move it, or name another folder.");
            }

            Directory.Delete(_begun, recursive: true);
        }

        Directory.CreateDirectory(_begun);
        File.WriteAllBytes(Path.Combine(_begun, Mark), []);
        Beside = Path.Combine(_begun, "whole");
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
        }
        else
        {
            Directory.Move(Beside, _folder);
        }

        _finished = true;
        Directory.Delete(_begun, recursive: true);
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
            Directory.Delete(_begun, recursive: true);
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

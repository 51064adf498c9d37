using System;
using System.Collections.Generic;
using System.Globalization;
using System.IO;
using System.IO.Hashing;
using System.Text;
using System.Text.Json;
using InscriptionLab.Outcomes;

namespace InscriptionLab.Surveys;

/// <summary>
/// What a survey has done so far: a file that only grows, one line a step, each with a check sum. A line that was cut off by a kill is
/// dropped at the next start; lines before it are never touched. One survey at a time holds it.
/// </summary>
internal sealed class SurveyJournal : IDisposable
{
    private const int SumLength = 8;
    private const byte LineEnd = (byte)'\n';

    private readonly FileStream _file;
    private readonly SurveyOptions _options;
    private readonly TimeProvider _clock;
    private readonly Dictionary<string, Place> _done = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> _faulty = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> _passing = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> _begun = new(StringComparer.Ordinal);
    private long _forcedAt;

    private SurveyJournal(FileStream file, SurveyOptions options, TimeProvider clock)
    {
        _file = file;
        _options = options;
        _clock = clock;
        _forcedAt = clock.GetTimestamp();
    }

    /// <summary>Gets the hashes of the photos that were examined, with the file that was.</summary>
    internal Dictionary<string, string> Examined { get; } = new(StringComparer.Ordinal);

    /// <summary>Gets how many lines were damaged and left out on opening.</summary>
    internal int Damaged { get; private set; }

    /// <summary>Opens the journal of a folder, or begins it.</summary>
    /// <exception cref="InscriptionLabException">Another survey holds it, it was made under other settings, or the line that says which is damaged.</exception>
    internal static SurveyJournal Open(string path, string settings, SurveyOptions options, TimeProvider clock)
    {
        FileStream file;
        try
        {
            file = new FileStream(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
        }
        catch (IOException problem)
        {
            throw new InscriptionLabException($"{path}: another survey is writing there; wait for it, or name another folder with --out.", problem);
        }

        var journal = new SurveyJournal(file, options, clock);
        try
        {
            journal.Load(path, settings);
            return journal;
        }
        catch
        {
            file.Dispose();
            throw;
        }
    }

    public void Dispose()
    {
        _file.Flush(flushToDisk: true);
        _file.Dispose();
    }

    /// <summary>Says whether a file is done and has not changed since. One whose fault may pass is not, nor are those that share its bytes.</summary>
    internal bool IsDone(SurveyFile file) =>
        _done.TryGetValue(file.Path, out var place) && place.Bytes == file.Bytes && place.ChangedAt == file.ChangedAt && !place.MayPass
        && (place.SameAs is null || Lasting(place.SameAs) is not null);

    /// <summary>Gives the file whose result stands for all files with these bytes; null where none was examined yet.</summary>
    internal string? FileOf(string sha256) => Lasting(sha256) ?? _passing.GetValueOrDefault(sha256);

    /// <summary>Gives how often a file was begun without an end that lasts.</summary>
    internal int BegunInVain(string path) => _begun.GetValueOrDefault(path);

    /// <summary>Adds a line. It is in the system's hands when this returns, so a kill of this program cannot lose it.</summary>
    internal void Add(JournalEntry entry)
    {
        var json = JsonSerializer.SerializeToUtf8Bytes(entry, SurveyJson.Readable.JournalEntry);
        var line = new byte[SumLength + 1 + json.Length + 1];
        Encoding.ASCII.GetBytes(Sum(json), line);
        line[SumLength] = (byte)' ';
        json.CopyTo(line.AsSpan(SumLength + 1));
        line[^1] = LineEnd;
        var start = _file.Position;
        _file.Write(line);
        _file.Flush();
        Note(entry, start);
        if (_clock.GetElapsedTime(_forcedAt) >= _options.ForceEvery)
        {
            _file.Flush(flushToDisk: true);
            _forcedAt = _clock.GetTimestamp();
        }
    }

    /// <summary>Reads the line of a file that is done.</summary>
    internal JournalEntry? Read(string path)
    {
        if (!_done.TryGetValue(path, out var place))
        {
            return null;
        }

        var end = _file.Position;
        _file.Position = place.Start;
        var entry = Parse(ReadLine()) ?? throw new InscriptionLabException("The survey's journal changed while it was read: start the survey again.");
        _file.Position = end;
        return entry;
    }

    private void Load(string path, string settings)
    {
        var sound = 0L;
        var first = true;
        while (_file.Position < _file.Length)
        {
            var start = _file.Position;
            var bytes = ReadLine();
            var whole = bytes.Length > 0 && bytes[^1] == LineEnd;
            var entry = whole ? Parse(bytes) : null;
            if (!whole)
            {
                break;
            }

            if (first && entry is not null)
            {
                CheckHead(entry, path, settings);
            }

            first = first && entry is null;
            Damaged += entry is null ? 1 : 0;
            sound = _file.Position;
            if (entry is not null)
            {
                Note(entry, start);
            }
        }

        _file.SetLength(sound);
        _file.Position = sound;
        if (first)
        {
            Add(new JournalEntry { Settings = settings });
        }
    }

    private static void CheckHead(JournalEntry head, string path, string settings)
    {
        if (head.Settings is null)
        {
            throw new InscriptionLabException($"{path}: the first line of the survey's journal, which says with what it was made, is damaged; its tables can still be read, but to go on name another folder with --out, where every photo is examined anew.");
        }

        if (head.Settings != settings)
        {
            throw new InscriptionLabException($"{Path.GetDirectoryName(path)} holds a survey made with another program, model or list: name another folder with --out.");
        }
    }

    private void Note(JournalEntry entry, long start)
    {
        if (entry.Begins is { } begun)
        {
            _begun[begun] = _begun.GetValueOrDefault(begun) + 1;
        }

        if (entry.File is not { } file)
        {
            return;
        }

        if (!entry.MayPass)
        {
            _begun.Remove(file);
        }

        _done[file] = new Place(start, entry.Bytes, entry.ChangedAt, entry.Same ? entry.Sha256 : null, entry.MayPass);
        if (entry is { Same: false, Sha256: { } sha256 })
        {
            (entry.Fault is null ? Examined : entry.MayPass ? _passing : _faulty)[sha256] = file;
        }
    }

    private string? Lasting(string sha256) => Examined.GetValueOrDefault(sha256) ?? _faulty.GetValueOrDefault(sha256);

    private byte[] ReadLine()
    {
        var line = new List<byte>();
        for (var next = _file.ReadByte(); next >= 0; next = _file.ReadByte())
        {
            line.Add((byte)next);
            if (next == LineEnd)
            {
                break;
            }
        }

        return [.. line];
    }

    private static JournalEntry? Parse(byte[] line)
    {
        if (line.Length < SumLength + 2)
        {
            return null;
        }

        var json = line.AsSpan(SumLength + 1, line.Length - SumLength - 2);
        try
        {
            return Encoding.ASCII.GetString(line, 0, SumLength) == Sum(json) ? JsonSerializer.Deserialize(json, SurveyJson.Readable.JournalEntry) : null;
        }
        catch (JsonException)
        {
            // A line with the right sum that is none of ours is as good as a damaged one.
            return null;
        }
    }

    private static string Sum(ReadOnlySpan<byte> json) => Crc32.HashToUInt32(json).ToString("x8", CultureInfo.InvariantCulture);

    /// <summary>Where the line of a file is, and which state of the file it is about.</summary>
    private readonly record struct Place(long Start, long Bytes, long ChangedAt, string? SameAs, bool MayPass);
}

using System;
using System.Collections.Immutable;
using System.Linq;
using System.Threading;

namespace InscriptionLab.Page.Bench;

/// <summary>One object on the bench: its photos, and what persons corrected. Safe to use from several threads.</summary>
internal sealed class Piece(string id, string name)
{
    private readonly Lock _gate = new();
    private ImmutableList<Correction> _undone = [];
    private volatile JointState _together = JointState.None;
    private int _lastCorrection;
    private int _version;

    internal string Id { get; } = id;

    /// <summary>Gets or sets what the user calls the piece.</summary>
    internal string Name { get; set; } = name;

    internal ImmutableArray<PiecePhoto> Photos { get; private set; } = [];

    internal ImmutableList<Correction> Corrections { get; private set; } = [];

    internal bool CanRedo => !_undone.IsEmpty;

    /// <summary>Gets what persons said of the piece beside its photos.</summary>
    internal PieceKnowledge Knowledge => PieceKnowledge.Of(Corrections);

    /// <summary>Gets the questions that stand answered in the catalogue from which the piece was laid out.</summary>
    internal ImmutableHashSet<string> KeptQuestions { get; set; } = [];

    /// <summary>Gets the questions that persons opened again, or answers of the catalogue that they took back.</summary>
    internal ImmutableHashSet<string> OpenedQuestions =>
        [.. KeptQuestions.Concat(Corrections.OfType<Correction.Seen>().Select(seen => seen.Feature)).Except(Knowledge.Answers.Select(answer => answer.Feature))];

    /// <summary>Gets what is held while a photo is said to be finished, or the photos to be read together.</summary>
    internal Lock Finishing { get; } = new();

    /// <summary>Gets what is held while the photos are read together: one at a time.</summary>
    internal Lock Joining { get; } = new();

    /// <summary>Gets what reads the photos together.</summary>
    internal JointChain Joint { get; } = new();

    /// <summary>Gets or sets what the photos gave together; a whole new record each time.</summary>
    internal JointState Together
    {
        get => _together;
        set => _together = value;
    }

    /// <summary>Gets a number that grows whenever something of the piece changes.</summary>
    internal int Version => Volatile.Read(ref _version);

    internal void Touch() => Interlocked.Increment(ref _version);

    internal void Add(PiecePhoto photo)
    {
        lock (_gate)
        {
            Photos = Photos.Add(photo);
            Touch();
        }
    }

    internal bool Remove(PiecePhoto photo)
    {
        lock (_gate)
        {
            var before = Photos.Length;
            Photos = Photos.Remove(photo);
            Corrections = Corrections.RemoveAll(correction => correction.PhotoId == photo.Id);
            _undone = _undone.RemoveAll(correction => correction.PhotoId == photo.Id);
            Together = Photos.IsEmpty ? JointState.None : Together;
            Touch();
            return Photos.Length < before;
        }
    }

    /// <summary>Records a correction; what was undone before cannot come back after it.</summary>
    /// <param name="make">Makes the correction with its number.</param>
    internal Correction Correct(Func<int, Correction> make)
    {
        lock (_gate)
        {
            var correction = make(++_lastCorrection);
            Corrections = Corrections.Add(correction);
            _undone = [];
            Touch();
            return correction;
        }
    }

    /// <summary>Takes the latest correction back; null where there is none.</summary>
    internal Correction? Undo()
    {
        lock (_gate)
        {
            if (Corrections.LastOrDefault() is not { } last)
            {
                return null;
            }

            Corrections = Corrections.RemoveAt(Corrections.Count - 1);
            _undone = _undone.Add(last);
            Touch();
            return last;
        }
    }

    /// <summary>Brings the correction back that was undone last; null where there is none.</summary>
    internal Correction? Redo()
    {
        lock (_gate)
        {
            if (_undone.LastOrDefault() is not { } last)
            {
                return null;
            }

            _undone = _undone.RemoveAt(_undone.Count - 1);
            Corrections = Corrections.Add(last);
            Touch();
            return last;
        }
    }
}

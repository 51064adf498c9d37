using System.Collections.Generic;
using System.Linq;
using System.Threading;
using System.Threading.Tasks;

namespace InscriptionLab.Page.Bench;

/// <summary>
/// Photos that wait for work, and those that are worked on. The piece looked at comes first; no photo is worked on twice at once; and while a photo
/// has no strip to be seen yet no other is begun, because whoever waits for the first sight of a photo waits for every core.
/// </summary>
internal sealed class WorkQueue
{
    private readonly Lock _gate = new();
    private readonly List<PiecePhoto> _waiting = [];
    private readonly List<PiecePhoto> _running = [];
    private TaskCompletionSource _changed = Fresh();
    private volatile string _lookedAt = string.Empty;

    /// <summary>Says which piece somebody looks at.</summary>
    internal void LookAt(string piece) => _lookedAt = piece;

    /// <summary>Adds a photo.</summary>
    /// <param name="photo">The photo.</param>
    /// <param name="isFirst">True to put it before all others.</param>
    internal void Add(PiecePhoto photo, bool isFirst)
    {
        lock (_gate)
        {
            _waiting.Insert(isFirst ? 0 : _waiting.Count, photo);
        }

        Pulse();
    }

    /// <summary>Waits for a photo that may be begun, and takes it.</summary>
    internal async Task<PiecePhoto> Take(CancellationToken cancel)
    {
        while (true)
        {
            Task changed;
            lock (_gate)
            {
                if (Next() is { } photo)
                {
                    _waiting.Remove(photo);
                    _running.Add(photo);
                    return photo;
                }

                changed = _changed.Task;
            }

            await changed.WaitAsync(cancel);
        }
    }

    /// <summary>Says that a photo is no longer worked on.</summary>
    internal void Done(PiecePhoto photo)
    {
        lock (_gate)
        {
            _running.Remove(photo);
        }

        Pulse();
    }

    /// <summary>Looks again whether something may be begun, after a photo has come further.</summary>
    internal void Pulse()
    {
        lock (_gate)
        {
            _changed.TrySetResult();
            _changed = Fresh();
        }
    }

    private PiecePhoto? Next()
    {
        if (_running.Any(photo => !photo.State.CanBeSeen))
        {
            return null;
        }

        var free = _waiting.Where(photo => !_running.Contains(photo)).ToList();
        return free.FirstOrDefault(photo => photo.PieceId == _lookedAt) ?? free.FirstOrDefault();
    }

    private static TaskCompletionSource Fresh() => new(TaskCreationOptions.RunContinuationsAsynchronously);
}

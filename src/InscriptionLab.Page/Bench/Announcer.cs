using System.Collections.Generic;
using System.Threading;
using System.Threading.Channels;

namespace InscriptionLab.Page.Bench;

/// <summary>Tells every open page what changed. A page that does not keep up misses messages and asks for the whole state again.</summary>
internal sealed class Announcer
{
    /// <summary>Messages waiting for one page at most.</summary>
    private const int Waiting = 64;

    private readonly Lock _gate = new();
    private readonly List<Channel<Announcement>> _listeners = [];

    /// <summary>Gets the number of pages that listen.</summary>
    internal int Listeners
    {
        get
        {
            lock (_gate)
            {
                return _listeners.Count;
            }
        }
    }

    internal Channel<Announcement> Listen()
    {
        var channel = Channel.CreateBounded<Announcement>(new BoundedChannelOptions(Waiting) { FullMode = BoundedChannelFullMode.DropOldest });
        lock (_gate)
        {
            _listeners.Add(channel);
        }

        return channel;
    }

    internal void StopListening(Channel<Announcement> channel)
    {
        lock (_gate)
        {
            _listeners.Remove(channel);
        }
    }

    internal void Say(Announcement announcement)
    {
        lock (_gate)
        {
            foreach (var listener in _listeners)
            {
                listener.Writer.TryWrite(announcement);
            }
        }
    }
}

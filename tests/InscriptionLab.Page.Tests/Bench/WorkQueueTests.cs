using System;
using System.Threading;
using System.Threading.Tasks;
using InscriptionLab.Page.Bench;
using Xunit;

namespace InscriptionLab.Page.Tests.Bench;

/// <summary>Which photo is worked on next.</summary>
public sealed class WorkQueueTests
{
    private static readonly TimeSpan Soon = TimeSpan.FromMilliseconds(200);

    private readonly WorkQueue _queue = new();

    [Fact]
    public async Task While_a_photo_has_nothing_to_be_seen_no_other_is_begun()
    {
        var (first, second) = (Photo("a", "one"), Photo("b", "one"));
        _queue.Add(first, false);
        _queue.Add(second, false);

        Assert.Same(first, await Taken());
        var next = Taken();
        Assert.NotSame(next, await Task.WhenAny(next, Task.Delay(Soon, TestContext.Current.CancellationToken)));
        first.State = first.State with { Problem = "It cannot be opened." };
        _queue.Pulse();

        Assert.Same(second, await next);
    }

    [Fact]
    public async Task No_photo_is_worked_on_twice_at_once()
    {
        var photo = Seen("a", "one");
        _queue.Add(photo, false);
        Assert.Same(photo, await Taken());
        _queue.Add(photo, false);
        var next = Taken();

        Assert.NotSame(next, await Task.WhenAny(next, Task.Delay(Soon, TestContext.Current.CancellationToken)));
        _queue.Done(photo);
        Assert.Same(photo, await next);
    }

    [Fact]
    public async Task The_piece_looked_at_comes_first_and_a_correction_before_its_other_photos()
    {
        var (other, mine, corrected) = (Seen("a", "one"), Seen("b", "two"), Seen("c", "two"));
        _queue.Add(other, false);
        _queue.Add(mine, false);
        _queue.Add(corrected, true);
        _queue.LookAt("two");

        Assert.Same(corrected, await Taken());
        Assert.Same(mine, await Taken());
        Assert.Same(other, await Taken());
    }

    [Fact]
    public async Task Waiting_ends_with_the_program()
    {
        using var stop = new CancellationTokenSource(Soon);

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => _queue.Take(stop.Token));
    }

    private Task<PiecePhoto> Taken() => _queue.Take(TestContext.Current.CancellationToken);

    private static PiecePhoto Photo(string id, string piece) => new(id, id, id, piece, 0, TimeProvider.System);

    private static PiecePhoto Seen(string id, string piece)
    {
        var photo = Photo(id, piece);
        photo.State = photo.State with { Problem = "It was looked at before." };
        return photo;
    }
}

using System;
using System.Collections.Generic;
using System.Linq;
using InscriptionLab.Vision.Native;
using Xunit;

namespace InscriptionLab.Vision.Tests.Native;

public sealed class AllOrNoneTests
{
    [Fact]
    public void Where_one_cannot_be_made_those_before_it_are_disposed()
    {
        var made = new List<Owner>();

        Assert.Throws<InvalidOperationException>(() => AllOrNone.Of(Enumerable.Range(0, 5).Select(number => Make(number, failsAt: 3))));

        Assert.Equal(3, made.Count);
        Assert.All(made, owner => Assert.True(owner.IsDisposed));

        Owner Make(int number, int failsAt)
        {
            made.Add(number < failsAt ? new Owner() : throw new InvalidOperationException());
            return made[^1];
        }
    }

    [Fact]
    public void Where_all_can_be_made_none_is_disposed()
    {
        var made = AllOrNone.Of(Enumerable.Range(0, 3).Select(_ => new Owner()));

        Assert.Equal(3, made.Length);
        Assert.All(made, owner => Assert.False(owner.IsDisposed));
    }

    private sealed class Owner : IDisposable
    {
        internal bool IsDisposed { get; private set; }

        public void Dispose() => IsDisposed = true;
    }
}

using System.Linq;
using CsCheck;
using InscriptionLab.Likeness;
using Xunit;

namespace InscriptionLab.Catalogue.Tests.Likeness;

public sealed class TiedTogetherTests
{
    [Fact]
    public void What_hangs_together_through_others_is_named_by_the_first()
    {
        var tied = new TiedTogether(6);
        tied.Tie(5, 3);
        tied.Tie(1, 4);
        tied.Tie(4, 5);

        Assert.Equal([0, 1, 2, 1, 1, 1], Enumerable.Range(0, 6).Select(tied.First));
    }

    [Fact]
    public void The_order_of_ties_does_not_matter() =>
        Gen.Select(Gen.Int[0, 9], Gen.Int[0, 9]).Array[0, 12].Sample(ties =>
        {
            var (forward, backward) = (new TiedTogether(10), new TiedTogether(10));
            foreach (var (one, other) in ties)
            {
                forward.Tie(one, other);
            }

            foreach (var (one, other) in ties.Reverse())
            {
                backward.Tie(other, one);
            }

            return Enumerable.Range(0, 10).All(thing => forward.First(thing) == backward.First(thing));
        });
}

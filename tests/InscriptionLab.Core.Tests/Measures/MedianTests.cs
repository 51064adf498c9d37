using System;
using InscriptionLab.Measures;
using Xunit;

namespace InscriptionLab.Core.Tests.Measures;

public sealed class MedianTests
{
    [Fact]
    public void Half_of_the_values_lie_on_either_side() => Assert.Equal(3, Median.Of([100, 1, 3, 2, 7]));

    [Fact]
    public void Of_two_middle_values_it_is_the_upper_one() => Assert.Equal(3, Median.Of([4, 1, 3, 2]));

    [Fact]
    public void No_values_have_no_middle() => Assert.Throws<ArgumentOutOfRangeException>(() => Median.Of([]));
}

using System;
using CsCheck;
using InscriptionLab.Measures;
using Xunit;

namespace InscriptionLab.Core.Tests.Measures;

public sealed class AngleTests
{
    [Theory]
    [InlineData(180, Math.PI)]
    [InlineData(-90, -Math.PI / 2)]
    [InlineData(1, 0.017453292519943295)]
    public void A_half_turn_is_pi(double degrees, double radians) => Assert.Equal(radians, Angle.FromDegrees(degrees).Radians, 1e-15);

    [Fact]
    public void Degrees_come_back_as_they_went() => Gen.Double[-1e4, 1e4].Sample(degrees => Math.Abs(Angle.FromDegrees(degrees).Degrees - degrees) <= 1e-9);

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void An_angle_is_finite(double radians) => Assert.Throws<ArgumentOutOfRangeException>(() => Angle.FromRadians(radians));
}

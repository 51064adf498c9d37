using CsCheck;
using InscriptionLab.Measures;
using Xunit;

namespace InscriptionLab.Core.Tests.Measures;

public sealed class LengthTests
{
    [Fact]
    public void An_inch_is_exactly_25_4_millimetres() => Assert.Equal(25.4, Length.FromInches(1).Millimetres);

    /// <summary>1 m = 443.296 lignes by the French law of 1799, so a pouce of 12 lignes is 27.069949 mm.</summary>
    [Fact]
    public void A_pouce_of_twelve_lignes_is_27_069949_millimetres() => Assert.Equal(27.069949, Length.FromParisLignes(12).Millimetres, 6);

    [Fact]
    public void Inches_come_back_as_they_went() =>
        Gen.Double[-1e6, 1e6].Sample(inches => System.Math.Abs(Length.FromInches(inches).Inches - inches) <= 1e-9 * (1 + System.Math.Abs(inches)));
}

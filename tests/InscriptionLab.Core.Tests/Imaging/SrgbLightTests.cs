using InscriptionLab.Imaging;
using Xunit;

namespace InscriptionLab.Core.Tests.Imaging;

public sealed class SrgbLightTests
{
    /// <summary>Worked by hand from IEC 61966-2-1: 10/255 lies on the straight foot (/ 12.92), 11/255 above the knee at 0.04045, 128/255 is 21.586 % of white.</summary>
    [Theory]
    [InlineData(0, 0)]
    [InlineData(10, 0.0030353)]
    [InlineData(11, 0.0033465)]
    [InlineData(128, 0.2158605)]
    [InlineData(188, 0.5028865)]
    [InlineData(255, 1)]
    public void Levels_give_the_light_of_the_standard(byte level, double light)
    {
        Assert.Equal(light, SrgbLight.Of(level), 1e-7);
        Assert.Equal(SrgbLight.Of(level), SrgbLight.OfLevels[level]);
    }

    [Fact]
    public void A_higher_level_is_always_more_light()
    {
        for (var level = 1; level < 256; level++)
        {
            Assert.True(SrgbLight.OfLevels[level] > SrgbLight.OfLevels[level - 1]);
        }
    }
}

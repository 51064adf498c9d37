using InscriptionLab.App.Reports;
using Xunit;

namespace InscriptionLab.App.Tests.Reports;

public sealed class CommandWordsTests
{
    [Theory]
    [InlineData("Measure the height and give it (--plane-offset MM), 0 where both are level.", "Measure the height and give it, 0 where both are level.")]
    [InlineData("Say what it is (--scale with kind and size; a bank card: --scale id1).", "Say what it is.")]
    [InlineData("Turn the tube (an eighth of a turn) and read both together (--as turns).", "Turn the tube (an eighth of a turn) and read both together.")]
    [InlineData("Nothing limits it.", "Nothing limits it.")]
    public void Options_of_the_command_go_and_the_sentence_stands(string sentence, string onThePage) =>
        Assert.Equal(onThePage, CommandWords.Without(sentence));
}

using System;
using Xunit;

namespace InscriptionLab.App.Tests.Cli;

public sealed class CommandLineTests
{
    [Theory]
    [InlineData("examin", "examin")]
    [InlineData("examine", "at least one photo")]
    [InlineData("examine photo.jpg --colour red", "--colour")]
    [InlineData("examine photo.jpg --as sideways", "sideways")]
    [InlineData("examine photo.jpg --json", "--json needs a value after it (see ./lab help examine).")]
    [InlineData("examine photo.jpg --lamp left --lamp right", "for 1 photo --lamp stands there 2 times.")]
    [InlineData("list search", "search needs WORDS after it (see ./lab help list).")]
    [InlineData("card a.pdf b.pdf", "card does not know what to do with b.pdf (see ./lab help card).")]
    [InlineData("export epidoc", "export needs --out and a value after it (see ./lab help export).")]
    [InlineData("survey photos", "survey needs --out and a value after it (see ./lab help survey).")]
    [InlineData("catalogue correct 1", "correct needs TEXT after it (see ./lab help catalogue).")]
    [InlineData("optics --objective -4mm", "-4mm")]
    [InlineData("examine photo.jpg --prior 17/3", "17/3")]
    public void A_command_line_that_is_not_understood_costs_one_sentence_and_exit_code_2(string line, string named)
    {
        var run = ProgramRun.Of(line.Split(' '));

        Assert.Equal(2, run.Code);
        BadInputTests.IsOneSentenceAbout(named, run);
        Assert.Empty(run.Output);
    }

    [Fact]
    public void Help_is_given_in_every_way_that_people_ask_for_it()
    {
        var page = ProgramRun.Of("help").Output;

        Assert.Contains("./lab examine", page, StringComparison.Ordinal);
        Assert.Contains("Sun", page, StringComparison.Ordinal);
        Assert.Equal(page, ProgramRun.Of().Output);
        Assert.Equal(page, ProgramRun.Of("--help").Output);
        Assert.Equal(ProgramRun.Of("help", "examine").Output, ProgramRun.Of("examine", "--help").Output);
    }

    [Theory]
    [InlineData("examine", "--reference", "--json", "--out", "--as")]
    [InlineData("measure", "--scale", "--plane-offset", "--json", "--out")]
    public void Help_names_every_option(string command, params string[] options)
    {
        var page = ProgramRun.Of("help", command).Output;

        Assert.All(options, option => Assert.Contains(option, page, StringComparison.Ordinal));
    }

    [Fact]
    public void The_version_is_one_line()
    {
        var run = ProgramRun.Of("--version");

        Assert.Equal(0, run.Code);
        Assert.StartsWith("InscriptionLab 0.", run.Output, StringComparison.Ordinal);
        Assert.Single(run.Output.TrimEnd('\n').Split('\n'));
    }
}

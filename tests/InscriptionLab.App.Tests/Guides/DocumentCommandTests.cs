using System;
using System.IO;
using System.Linq;
using InscriptionLab.App.Cli;
using InscriptionLab.App.Tests.Cli;
using InscriptionLab.Assess;
using Xunit;

namespace InscriptionLab.App.Tests.Guides;

/// <summary>What the documents tell their readers to type is understood by the program's own parsers.</summary>
public sealed class DocumentCommandTests
{
    [Fact]
    public void Every_command_of_the_documents_is_understood()
    {
        using var composition = new Composition();
        var line = new CommandLine(composition, new Terminal(TextWriter.Null, TextWriter.Null));
        var commands = DocumentCommands.All().ToArray();

        Assert.True(commands.Length > 60, $"Only {commands.Length} commands were found in the documents.");
        Assert.Empty(commands.Select(command => (Said: Complaint(line, command.Arguments), command)).Where(one => one.Said is not null).Select(one => $"{one.command.Document}: {string.Join(' ', one.command.Arguments)}: {one.Said}"));
    }

    [Fact]
    public void A_command_that_is_wrong_would_be_told()
    {
        using var composition = new Composition();
        var line = new CommandLine(composition, new Terminal(TextWriter.Null, TextWriter.Null));

        Assert.NotNull(Complaint(line, ["examine", "photo.jpg", "--colour", "red"]));
        Assert.NotNull(Complaint(line, ["assess", "folder", "--colour"]));
        Assert.NotNull(Complaint(line, ["bench", "weather"]));
        Assert.NotNull(Complaint(line, ["help", "weather"]));
    }

    /// <summary>Commands of <c>serve</c> are looked at beside the page's own tests.</summary>
    private static string? Complaint(CommandLine line, string[] arguments)
    {
        switch (arguments[0])
        {
            case "serve" or "test":
                return null;
            case "assess":
                // An option at the end may be named without its file.
                return AssessArguments.Parse(arguments[1..], out var problem) is null && AssessArguments.Parse([.. arguments[1..], "FILE"], out _) is null ? problem : null;
            case "bench":
                return arguments.Length == 1 || ProgramRun.Of("help", "bench").Output.Contains(arguments[1], StringComparison.Ordinal) ? null : $"bench does not know {arguments[1]}";
            case "help":
                return ProgramRun.Of(arguments) is { Code: not 0 } run ? run.Error : null;
            default:
                return line.ComplaintOf(arguments);
        }
    }
}

using System.IO;
using System.Linq;
using System.Threading;
using InscriptionLab.App.Cli;

namespace InscriptionLab.App.Tests.Cli;

/// <summary>One run of the program inside the test process.</summary>
/// <param name="Code">Exit code.</param>
/// <param name="Output">What went to the screen.</param>
/// <param name="Error">What went to the error stream.</param>
internal sealed record ProgramRun(int Code, string Output, string Error)
{
    /// <summary>Gets the lines of the error stream.</summary>
    internal string[] Complaints => [.. Error.Split('\n').Where(line => line.Length > 0)];

    internal static ProgramRun Of(params string[] arguments)
    {
        using var composition = new Composition();
        using var output = new StringWriter { NewLine = "\n" };
        using var error = new StringWriter { NewLine = "\n" };
        var code = new CommandLine(composition, new Terminal(output, error)).Run(arguments, CancellationToken.None);
        return new ProgramRun(code, output.ToString(), error.ToString());
    }
}

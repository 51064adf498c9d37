using InscriptionLab.App.Cli;

namespace InscriptionLab.App;

internal static class Program
{
    private static int Main(string[] arguments)
    {
        using var interruption = new Interruption();
        using var composition = new Composition();
        return new CommandLine(composition, Terminal.OfThisProcess()).Run(arguments, interruption.Token);
    }
}

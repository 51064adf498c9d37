using InscriptionLab.App.Cli;

namespace InscriptionLab.App;

internal static class Program
{
    private static int Main(string[] arguments)
    {
        if (PhotoDecoding.Asked(arguments) is { } mostBytes)
        {
            return PhotoDecoding.Serve(mostBytes);
        }

        using var interruption = new Interruption();
        using var composition = new Composition();
        return new CommandLine(composition, Terminal.OfThisProcess()).Run(arguments, interruption.Token);
    }
}

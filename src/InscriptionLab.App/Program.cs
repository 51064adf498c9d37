using InscriptionLab.App.Cli;

namespace InscriptionLab.App;

internal static class Program
{
    private static int Main(string[] arguments)
    {
        if (arguments is [PhotoDecoding.Word])
        {
            return PhotoDecoding.Serve();
        }

        using var interruption = new Interruption();
        using var composition = new Composition();
        return new CommandLine(composition, Terminal.OfThisProcess()).Run(arguments, interruption.Token);
    }
}

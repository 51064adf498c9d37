namespace InscriptionLab.App.Cli;

/// <summary>Exit codes of the program.</summary>
internal static class ExitCode
{
    /// <summary>Everything asked for was done; a reasoned "cannot tell" counts as done.</summary>
    internal const int Done = 0;

    /// <summary>At least one photo could not be used, or something around the program (a model, a list) is not as it must be.</summary>
    internal const int Failed = 1;

    /// <summary>The command line was not understood.</summary>
    internal const int Misused = 2;

    /// <summary>The user stopped the run (128 + SIGINT, the shell's usual number).</summary>
    internal const int Interrupted = 130;
}

namespace InscriptionLab.App.Cli;

/// <summary>Help of <c>serve</c>, which is a program of its own beside this one.</summary>
internal static class ServePage
{
    internal const string Text = """
        ./lab serve [--port N] [--reference FILE] [--catalogue FILE] [--address IP [--name NAME]...]

        Opens the page on this machine, at the address that it prints: go there with a browser, drop photos,
        look, correct. Nothing leaves the machine; no connection to the internet is needed. Stop it with
        Ctrl-C.

          --port N           port to listen on (default 8137; 0 takes any free one)
          --reference FILE   attested forms and known copies; without it the demonstration list
          --catalogue FILE   the catalogue to look into and to keep pieces in (made if it is not there);
                             photos that are kept are copied into FILE-photos beside it
          --address IP       let other machines in (a tablet at the bench, say), for example
                             --address 0.0.0.0; the program then prints a link with a key, and only
                             those who have the link get in. The connection itself is not encrypted: use it
                             on your own network, or behind a proxy that adds TLS
          --name NAME        with --address: a name of this machine that may stand in the link

        Exit code: 0 stopped by you, 1 the page could not be opened, 2 the command was not understood.

        """;
}

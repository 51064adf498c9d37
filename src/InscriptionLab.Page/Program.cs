using System;
using System.IO;
using System.Net.Sockets;
using System.Threading;
using System.Threading.Tasks;
using InscriptionLab.App;
using InscriptionLab.App.Cli;
using InscriptionLab.App.Examining;
using InscriptionLab.Cataloguing;
using InscriptionLab.Outcomes;
using Microsoft.Extensions.Hosting;

namespace InscriptionLab.Page;

internal static class Program
{
    private static async Task<int> Main(string[] arguments)
    {
        if (Array.Exists(arguments, argument => argument is "--help" or "-h"))
        {
            await Console.Out.WriteAsync(ServePage.Text);
            return ExitCode.Done;
        }

        if (!ServeArguments.TryParse(arguments, out var request, out var problem))
        {
            await Console.Error.WriteLineAsync(problem);
            return ExitCode.Misused;
        }

        try
        {
            using var composition = new Composition();
            var references = ReferenceSource.Load(request.References);
            var workshop = new Workshop(composition, references.List, request.References is null);
            await using var page = PageHost.Build(request, workshop, catalogue: request.Catalogue is { } address ? Catalogue.Open(address, composition.Clock) : null);
            await page.StartAsync();
            await Console.Out.WriteLineAsync(PageHost.Greeting(page, request));
            using var closing = new CancellationTokenSource();
            var warming = WarmUp.Begin(workshop.Stages.Examining, closing.Token);
            await page.WaitForShutdownAsync();
            await closing.CancelAsync();
            await warming;
            return ExitCode.Done;
        }
        catch (Exception failure) when (failure.GetBaseException() is SocketException socket)
        {
            await Console.Error.WriteLineAsync(WhyClosed(socket.SocketErrorCode, request));
            return ExitCode.Failed;
        }
        catch (Exception failure) when (failure is InscriptionLabException or IOException or UnauthorizedAccessException)
        {
            await Console.Error.WriteLineAsync(failure.Message);
            return ExitCode.Failed;
        }
    }

    private static string WhyClosed(SocketError error, ServeRequest request) => error switch
    {
        SocketError.AddressAlreadyInUse => $"Port {request.Port} is in use, perhaps by a page that is open already; stop that one, or choose another port with --port.",
        SocketError.AddressNotAvailable => $"This machine has no address {request.Address}; give one of its own, or 0.0.0.0 for all of them.",
        SocketError.AccessDenied => $"Port {request.Port} is kept for the system; choose another with --port, for example {ServeRequest.UsualPort}.",
        _ => $"The page could not be opened at {request.Address}, port {request.Port} ({error}); choose another with --address and --port.",
    };
}

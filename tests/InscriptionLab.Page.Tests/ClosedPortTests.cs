using System;
using System.Diagnostics;
using System.Globalization;
using System.IO;
using System.Net;
using System.Net.Sockets;
using System.Threading.Tasks;
using Xunit;

namespace InscriptionLab.Page.Tests;

/// <summary>The page as a process, where it cannot be opened: one sentence and an exit code.</summary>
public sealed class ClosedPortTests
{
    [Fact]
    public async Task A_port_in_use_costs_one_sentence()
    {
        using var other = new TcpListener(IPAddress.Loopback, 0);
        other.Start();
        var port = ((IPEndPoint)other.LocalEndpoint).Port.ToString(CultureInfo.InvariantCulture);

        await Refused($"Port {port} is in use, perhaps by a page that is open already; stop that one, or choose another port with --port.", "--port", port);
    }

    /// <summary>The address is one that RFC 5737 keeps for examples, so that no machine has it.</summary>
    [Fact]
    public Task An_address_of_another_machine_costs_one_sentence() =>
        Refused("This machine has no address 192.0.2.7; give one of its own, or 0.0.0.0 for all of them.", "--port", "0", "--address", "192.0.2.7");

    private static async Task Refused(string sentence, params string[] arguments)
    {
        var start = new ProcessStartInfo(Path.Combine(AppContext.BaseDirectory, "InscriptionLab.Page"), arguments) { RedirectStandardOutput = true, RedirectStandardError = true };
        using var page = Process.Start(start)!;
        var (output, error) = (page.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken), page.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken));
        await page.WaitForExitAsync(TestContext.Current.CancellationToken);

        Assert.Equal((1, string.Empty, sentence + "\n"), (page.ExitCode, await output, await error));
    }
}

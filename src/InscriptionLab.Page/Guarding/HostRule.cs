using System;
using System.Net;
using Microsoft.AspNetCore.Http;

namespace InscriptionLab.Page.Guarding;

/// <summary>
/// Under which names the page may be asked for. A foreign name that leads to this machine (DNS rebinding) would let another site read the
/// page with the user's browser, so only names that cannot be rebound are answered: this machine's own, literal addresses, names the user gave.
/// </summary>
internal sealed class HostRule(ServeRequest request)
{
    internal bool Allows(HostString host)
    {
        var name = host.Host;
        if (name.Equals("localhost", StringComparison.OrdinalIgnoreCase))
        {
            return true;
        }

        return IPAddress.TryParse(name.Trim('[', ']'), out var address)
            ? IPAddress.IsLoopback(address) || !request.ThisMachineOnly
            : request.Names.Contains(name, StringComparer.OrdinalIgnoreCase);
    }
}

using System;
using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Net;

namespace InscriptionLab.Page;

/// <summary>Reads the command line of <c>serve</c>.</summary>
internal static class ServeArguments
{
    private const int LargestPort = 65535;

    /// <summary>Reads the arguments.</summary>
    /// <param name="arguments">Arguments after the word serve.</param>
    /// <param name="request">The request where the arguments are understood.</param>
    /// <param name="problem">One sentence where they are not; empty otherwise.</param>
    internal static bool TryParse(string[] arguments, [NotNullWhen(true)] out ServeRequest? request, out string problem)
    {
        var found = new ServeRequest(IPAddress.Loopback, ServeRequest.UsualPort, [], null);
        request = null;
        for (var i = 0; i < arguments.Length; i++)
        {
            var parts = arguments[i].Split('=', 2);
            if (parts[0] is not ("--port" or "--reference" or "--catalogue" or "--address" or "--name"))
            {
                problem = $"serve does not know {arguments[i]}; it has --port, --reference, --catalogue, --address and --name (see ./lab help serve).";
                return false;
            }

            var value = parts.Length == 2 ? parts[1] : ++i < arguments.Length ? arguments[i] : null;
            if (string.IsNullOrWhiteSpace(value))
            {
                problem = $"{parts[0]} needs a value (see ./lab help serve).";
                return false;
            }

            (found, problem) = With(found, parts[0], value);
            if (problem.Length > 0)
            {
                return false;
            }
        }

        if (found.Names.Length > 0 && found.ThisMachineOnly)
        {
            problem = "--name goes with --address: without it only this machine can reach the page.";
            return false;
        }

        problem = string.Empty;
        request = found;
        return true;
    }

    private static (ServeRequest Request, string Problem) With(ServeRequest request, string option, string value)
    {
        switch (option)
        {
            case "--port":
                return int.TryParse(value, NumberStyles.None, CultureInfo.InvariantCulture, out var port) && port <= LargestPort
                    ? (request with { Port = port }, string.Empty)
                    : (request, $"The port {value} is no number from 0 to {LargestPort}.");
            case "--address":
                return IPAddress.TryParse(value, out var address)
                    ? (request with { Address = address }, string.Empty)
                    : (request, $"The address {value} is no IP address; write for example 0.0.0.0 for every network of this machine.");
            case "--name":
                return Uri.CheckHostName(value) == UriHostNameType.Dns
                    ? (request with { Names = request.Names.Add(value) }, string.Empty)
                    : (request, $"The name {value} is no name of a machine.");
            case "--catalogue":
                return (request with { Catalogue = value }, string.Empty);
            default:
                return (request with { References = value }, string.Empty);
        }
    }
}

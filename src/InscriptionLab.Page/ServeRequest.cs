using System.Collections.Immutable;
using System.Net;

namespace InscriptionLab.Page;

/// <summary>What the user asks of <c>serve</c>.</summary>
/// <param name="Address">Address to listen on; this machine only unless the user chooses otherwise.</param>
/// <param name="Port">Port, 0 for any free one.</param>
/// <param name="Names">Further names under which the page may be asked for, where it listens to other machines.</param>
/// <param name="Catalogue">The catalogue to look into and to keep in; null for none.</param>
/// <param name="References">Reference list; null for the demonstration list.</param>
internal sealed record ServeRequest(IPAddress Address, int Port, ImmutableArray<string> Names, string? References, string? Catalogue = null)
{
    /// <summary>Port where the user names none; not among the ports registered with IANA for another use (looked up from memory).</summary>
    internal const int UsualPort = 8137;

    /// <summary>Gets a value indicating whether only this machine can reach the page.</summary>
    internal bool ThisMachineOnly => IPAddress.IsLoopback(Address);
}

using System;
using Microsoft.AspNetCore.Http;

namespace InscriptionLab.Page.Guarding;

/// <summary>Which requests may come from another site: a plain link to the page, nothing else.</summary>
internal sealed class SiteRule(PageKeys keys)
{
    /// <summary>Header in which our own page sends its token.</summary>
    internal const string TokenHeader = "X-Lab-Token";

    /// <summary>Tells why a request is refused; null where it may pass.</summary>
    internal string? Objection(HttpRequest request)
    {
        var site = request.Headers["Sec-Fetch-Site"].ToString();
        var fromElsewhere = site is "cross-site" or "same-site";
        if (fromElsewhere && !IsPlainLink(request))
        {
            return "Another site asked for this; the page only answers itself.";
        }

        if (HttpMethods.IsGet(request.Method) || HttpMethods.IsHead(request.Method))
        {
            return null;
        }

        var origin = request.Headers.Origin.ToString();
        if (origin.Length > 0 && !IsOwn(origin, request))
        {
            return "Another site asked for a change; the page only takes changes from itself.";
        }

        return PageKeys.Same(request.Headers[TokenHeader].ToString(), keys.FormToken) ? null : "The page was opened before the program was started again; load it anew.";
    }

    private static bool IsPlainLink(HttpRequest request) =>
        HttpMethods.IsGet(request.Method)
        && request.Path.Value is "/" or "/enter"
        && request.Headers["Sec-Fetch-Mode"].ToString() == "navigate"
        && request.Headers["Sec-Fetch-Dest"].ToString() == "document";

    private static bool IsOwn(string origin, HttpRequest request) =>
        Uri.TryCreate(origin, UriKind.Absolute, out var uri) && string.Equals(uri.Authority, request.Host.Value, StringComparison.OrdinalIgnoreCase);
}

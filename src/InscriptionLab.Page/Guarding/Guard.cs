using System.Threading.Tasks;
using Microsoft.AspNetCore.Http;

namespace InscriptionLab.Page.Guarding;

/// <summary>Stands before everything: host, site, key, and the headers that keep the browser from doing more than the page needs.</summary>
internal sealed class Guard(HostRule hosts, SiteRule sites, Door door)
{
    /// <summary>No script but the page's own files, nothing from anywhere else, in nobody's frame.</summary>
    private const string ContentRule =
        "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' blob:; font-src 'self'; connect-src 'self'; "
        + "base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

    internal async Task Invoke(HttpContext context, RequestDelegate next)
    {
        Protect(context.Response.Headers);
        if (!hosts.Allows(context.Request.Host))
        {
            await Refuse(context, StatusCodes.Status421MisdirectedRequest, "This page is not reached under that name; open it with the address that the program printed.");
        }
        else if (sites.Objection(context.Request) is { } objection)
        {
            await Refuse(context, StatusCodes.Status403Forbidden, objection);
        }
        else if (context.Request.Path.Value == Door.Path && door.Enter(context))
        {
            // The answer leads on to the page.
        }
        else if (!door.IsOpenTo(context.Request))
        {
            await Refuse(context, StatusCodes.Status401Unauthorized, "Open the page with the link that the program printed when it was started; the link has a key in it.");
        }
        else
        {
            await next(context);
        }
    }

    internal static async Task Refuse(HttpContext context, int status, string sentence)
    {
        context.Response.StatusCode = status;
        context.Response.ContentType = "text/plain; charset=utf-8";
        await context.Response.WriteAsync(sentence);
    }

    private static void Protect(IHeaderDictionary headers)
    {
        headers.ContentSecurityPolicy = ContentRule;
        headers.XContentTypeOptions = "nosniff";
        headers.XFrameOptions = "DENY";
        headers["Referrer-Policy"] = "no-referrer";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        headers["Permissions-Policy"] = "camera=(), microphone=(), geolocation=(), interest-cohort=()";
        headers.CacheControl = "no-store";
    }
}

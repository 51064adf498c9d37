using Microsoft.AspNetCore.Http;

namespace InscriptionLab.Page.Guarding;

/// <summary>Lets other machines in that have the link with the key; this machine needs none where only it can come.</summary>
internal sealed class Door(ServeRequest request, PageKeys keys)
{
    /// <summary>Path of the link with the key.</summary>
    internal const string Path = "/enter";

    private const string Cookie = "lab-key";

    internal bool IsOpenTo(HttpRequest asked) => request.ThisMachineOnly || PageKeys.Same(asked.Cookies[Cookie], keys.DoorKey);

    /// <summary>Answers the link with the key.</summary>
    /// <returns>True where the key fits.</returns>
    internal bool Enter(HttpContext context)
    {
        if (!PageKeys.Same(context.Request.Query["key"].ToString(), keys.DoorKey))
        {
            return false;
        }

        context.Response.Cookies.Append(Cookie, keys.DoorKey, new CookieOptions
        {
            HttpOnly = true,
            SameSite = SameSiteMode.Strict,
            Secure = context.Request.IsHttps,
            Path = "/",
        });
        context.Response.Redirect("/");
        return true;
    }
}

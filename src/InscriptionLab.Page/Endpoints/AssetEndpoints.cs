using InscriptionLab.Page.Assets;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace InscriptionLab.Page.Endpoints;

/// <summary>The files of the page itself.</summary>
internal static class AssetEndpoints
{
    internal static void Map(IEndpointRouteBuilder routes, PageAssets assets)
    {
        routes.MapGet("/", context => Serve(context, assets));
        routes.MapGet("/{**path}", context => Serve(context, assets));
    }

    private static async System.Threading.Tasks.Task Serve(HttpContext context, PageAssets assets)
    {
        if (assets.Find(context.Request.Path.Value ?? "/") is not { } asset)
        {
            context.Response.StatusCode = StatusCodes.Status404NotFound;
            return;
        }

        context.Response.Headers.ETag = asset.Tag;
        context.Response.Headers.CacheControl = "no-cache";
        if (context.Request.Headers.IfNoneMatch == asset.Tag)
        {
            context.Response.StatusCode = StatusCodes.Status304NotModified;
            return;
        }

        context.Response.ContentType = asset.ContentType;
        context.Response.ContentLength = asset.Bytes.Length;
        await context.Response.BodyWriter.WriteAsync(asset.Bytes, context.RequestAborted);
    }
}

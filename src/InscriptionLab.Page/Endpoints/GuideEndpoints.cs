using System.Linq;
using InscriptionLab.App.Guides;
using InscriptionLab.Page.Answers;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace InscriptionLab.Page.Endpoints;

/// <summary>The guides for users, of the same Markdown as the command line prints.</summary>
internal static class GuideEndpoints
{
    internal static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/api/guides", () => Results.Ok(GuideShelf.All().Select(guide => new GuideAnswer(guide.Name, guide.Title, null))));
        routes.MapGet("/api/guides/{name}", (string name) => GuideShelf.Find(name) is { } guide
            ? Results.Ok(new GuideAnswer(guide.Name, guide.Title, GuideMarkdown.Html(guide)))
            : Results.NotFound(new ProblemAnswer($"There is no guide {name}; the page lists those that there are.")));
    }
}

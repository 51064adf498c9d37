using System.Linq;
using System.Threading.RateLimiting;
using InscriptionLab.Cataloguing;
using InscriptionLab.Page.Assets;
using InscriptionLab.Page.Bench;
using InscriptionLab.Page.Endpoints;
using InscriptionLab.Page.Guarding;
using InscriptionLab.Page.Keeping;
using InscriptionLab.Page.Measuring;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace InscriptionLab.Page;

/// <summary>Builds the page's server by hand: what it answers, and what stands before it.</summary>
internal static class PageHost
{
    /// <summary>Largest body of a request that is no photo: a reference list of many thousand rows.</summary>
    private const long UsualBodyBytes = 16L * 1024 * 1024;

    /// <summary>Requests answered at once; more wait their turn.</summary>
    private const int AtOnce = 32;

    /// <summary>Requests that may wait; beyond it the answer is "too busy".</summary>
    private const int Waiting = 4096;

    internal static WebApplication Build(ServeRequest request, Workshop workshop, BenchLimits? limits = null, Catalogue? catalogue = null)
    {
        var builder = WebApplication.CreateSlimBuilder(new WebApplicationOptions { Args = [] });
        // That the page could not be opened is said in one sentence by the program; the host would add where in its own code it noticed.
        builder.Logging.ClearProviders().AddSimpleConsole().SetMinimumLevel(LogLevel.Warning).AddFilter("Microsoft.Extensions.Hosting.Internal.Host", LogLevel.None);
        builder.WebHost.ConfigureKestrel(kestrel =>
        {
            kestrel.AddServerHeader = false;
            kestrel.Limits.MaxRequestBodySize = UsualBodyBytes;
            kestrel.Listen(request.Address, request.Port);
        });
        builder.Services.AddSingleton(new CatalogueShelf(catalogue, workshop));
        builder.Services.AddSingleton(_ => new MeasuringTable(workshop.Measurer));
        AddServices(builder.Services, request, workshop, limits ?? new BenchLimits());

        var page = builder.Build();
        var guard = new Guard(new HostRule(request), new SiteRule(page.Services.GetRequiredService<PageKeys>()), new Door(request, page.Services.GetRequiredService<PageKeys>()));
        page.Use(guard.Invoke);
        page.UseRateLimiter();
        page.Use(Troubles.Invoke);
        page.UseRouting();
        BenchEndpoints.Map(page);
        DemonstrationEndpoints.Map(page);
        PictureEndpoints.Map(page);
        ReportEndpoints.Map(page);
        CatalogueEndpoints.Map(page);
        DatasetEndpoints.Map(page);
        ListEndpoints.Map(page);
        GuideEndpoints.Map(page);
        MeasureEndpoints.Map(page);
        EventEndpoints.Map(page);
        AssetEndpoints.Map(page, new PageAssets());
        return page;
    }

    /// <summary>What the program says when the page is open.</summary>
    internal static string Greeting(WebApplication page, ServeRequest request)
    {
        var address = AddressOf(page);
        return request.ThisMachineOnly
            ? $"The page is open at {address} (this machine only). Stop it with Ctrl-C."
            : $"""
               The page is open to other machines. Give this link to those who may come in; whoever has it can:
                 {address}{Door.Path}?key={page.Services.GetRequiredService<PageKeys>().DoorKey}
               {(request.Address.Equals(System.Net.IPAddress.Any) ? "Write this machine's own address in place of 0.0.0.0. " : string.Empty)}The connection is not encrypted: use it on your own network only, or behind a proxy that adds TLS. Stop it with Ctrl-C.
               """;
    }

    /// <summary>Gives the address of a page that was started.</summary>
    internal static string AddressOf(WebApplication page) =>
        page.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.First();

    private static void AddServices(IServiceCollection services, ServeRequest request, Workshop workshop, BenchLimits limits)
    {
        services.AddSingleton(request);
        services.AddSingleton(workshop);
        services.AddSingleton<PageKeys>();
        services.AddSingleton(_ => new BenchTable(limits, workshop.Clock));
        services.AddSingleton<BenchWorker>();
        services.AddSingleton(provider => new DatasetDesk(provider.GetRequiredService<CatalogueShelf>(), workshop, provider.GetRequiredService<BenchTable>().Announcer, provider.GetRequiredService<ILogger<DatasetDesk>>()));
        services.AddHostedService(provider => provider.GetRequiredService<BenchWorker>());
        services.AddRateLimiter(limiter =>
        {
            limiter.RejectionStatusCode = StatusCodes.Status503ServiceUnavailable;
            limiter.GlobalLimiter = PartitionedRateLimiter.Create<HttpContext, string>(context =>
                context.Request.Path == EventEndpoints.Path
                    ? RateLimitPartition.GetNoLimiter("events")
                    : RateLimitPartition.GetConcurrencyLimiter("all", _ => new ConcurrencyLimiterOptions { PermitLimit = AtOnce, QueueLimit = Waiting }));
        });
    }
}

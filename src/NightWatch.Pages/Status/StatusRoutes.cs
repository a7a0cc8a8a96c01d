using NightWatch.Pages.Layout;

namespace NightWatch.Pages.Status;

/// <summary>The status page.</summary>
internal static class StatusRoutes
{
    public static IServiceCollection AddStatus(this IServiceCollection services) => services.AddSingleton<StatusHandler>();

    public static void MapStatus(this IEndpointRouteBuilder pages) =>
        pages.MapGet(
            "/status", async (StatusHandler handler, CancellationToken stop) => PageResult.Of<StatusPage>(await handler.ReadAsync(stop)));
}

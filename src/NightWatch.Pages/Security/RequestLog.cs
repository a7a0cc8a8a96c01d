using System.Diagnostics;

namespace NightWatch.Pages.Security;

/// <summary>One line a request: the route's pattern, never the address asked for (links are secrets), never who asked.</summary>
internal sealed partial class RequestLog(RequestDelegate next, ILogger<RequestLog> log)
{
    public async Task InvokeAsync(HttpContext context)
    {
        var started = Stopwatch.GetTimestamp();
        await next(context);
        var route = (context.GetEndpoint() as RouteEndpoint)?.RoutePattern.RawText ?? "nothing";
        if (route.StartsWith("/assets", StringComparison.Ordinal)) return;
        Answered(
            log,
            context.Request.Method is "GET" or "POST" or "HEAD" ? context.Request.Method : "other",
            route,
            context.Response.StatusCode,
            Stopwatch.GetElapsedTime(started).TotalMilliseconds);
    }

    [LoggerMessage(401, LogLevel.Information, "{Method} {Route}: {Status} in {Ms:0} ms")]
    private static partial void Answered(ILogger log, string method, string route, int status, double ms);
}

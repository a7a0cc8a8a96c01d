using System.Globalization;
using Microsoft.AspNetCore.Mvc;
using NightWatch.Pages.Layout;
using NightWatch.Pages.Security;
using NightWatch.Store.Outbox;
using NodaTime;

namespace NightWatch.Pages.Operator;

/// <summary>For whoever runs the installation.</summary>
internal static class OperatorRoutes
{
    public static void Map(RouteGroupBuilder pages)
    {
        var own = pages.MapGroup("/operator").Behind<OperatorGate>();
        own.MapGet(
            "",
            async ([FromQuery] string? done, OperatorHandler handler, CancellationToken stop) =>
                PageResult.Of<OperatorPage>(await handler.OfAsync(NoteOf(done), stop)));
        own.MapPost("/retry", RetryAsync);
    }

    private static async Task<IResult> RetryAsync(HttpContext http, OutboxStore outbox, IClock clock, CancellationToken stop)
    {
        var text = (await http.Request.ReadFormAsync(stop))["id"].ToString();
        var isBack =
            long.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var id)
            && await outbox.ReviveAsync(id, clock.GetCurrentInstant(), stop);
        return http.SeeOther(isBack ? "operator?done=back" : "operator?done=late");
    }

    private static string? NoteOf(string? done) => done switch
    {
        "back" => "The letter is back in the queue.",
        "late" => "That letter cannot be tried again: it is not dead, or its time has passed.",
        _ => null,
    };
}

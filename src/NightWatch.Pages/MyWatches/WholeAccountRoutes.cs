using NightWatch.Pages.Calendars;
using NightWatch.Pages.Layout;
using NightWatch.Pages.Security;
using NightWatch.Pages.Subscribers;
using NightWatch.Store.Subscribers;

namespace NightWatch.Pages.MyWatches;

/// <summary>All of a subscriber's data at once: to take away, or to be gone.</summary>
internal static class WholeAccountRoutes
{
    public static void Map(RouteGroupBuilder own)
    {
        own.MapGet("/export", ExportAsync);
        own.MapPost("/calendar", CalendarAsync);
        own.MapGet("/delete", (HttpContext http) => Ask(SignedInOnly.Who(http), isWrong: false));
        own.MapPost("/delete", DeleteAsync);
    }

    private static async Task<IResult> ExportAsync(HttpContext http, DataExport export, CancellationToken stop)
    {
        var bytes = await export.OfAsync(SignedInOnly.Who(http), stop);
        return Results.File(bytes, "application/json; charset=utf-8", "nightwatch-data.json");
    }

    // Making or ending the address is a change, so that it takes a button.
    private static async Task<IResult> CalendarAsync(HttpContext http, CalendarFeeds feeds, CancellationToken stop)
    {
        var isNew = (await http.Request.ReadFormAsync(stop))["do"] == "renew";
        var link = isNew ? await feeds.RevokeAsync(SignedInOnly.Who(http), stop) : await feeds.LinkAsync(SignedInOnly.Who(http), stop);
        return link is null
            ? PageResult.Says(
                "There is no calendar to follow",
                StatusCodes.Status404NotFound,
                "The pages of this installation are for trying out, on this machine alone.")
            : PageResult.Of<CalendarPage>(
                new Dictionary<string, object?> { [nameof(CalendarPage.Address)] = link.AbsoluteUri, [nameof(CalendarPage.IsNew)] = isNew }
            );
    }

    private static async Task<IResult> DeleteAsync(HttpContext http, SubscriberStore subscribers, Sessions sessions, CancellationToken stop)
    {
        var address = SignedInOnly.Who(http);
        var typed = (await http.Request.ReadFormAsync(stop))["typed"].ToString().Trim();
        if (!string.Equals(typed, address, StringComparison.OrdinalIgnoreCase)) return Ask(address, isWrong: true);
        await subscribers.EraseAsync(address, stop);
        await sessions.EndAsync(http, stop);
        http.ForgetHere();
        return PageResult.Says(
            "Everything is deleted",
            StatusCodes.Status200OK,
            "Watches, sites, history and letters are gone, and no letter will come any more.",
            "Copies in backups go as the backups do.");
    }

    private static IResult Ask(string address, bool isWrong) =>
        PageResult.Of<DeletePage>(
            new Dictionary<string, object?> { [nameof(DeletePage.Address)] = address, [nameof(DeletePage.IsWrong)] = isWrong },
            isWrong ? StatusCodes.Status400BadRequest : StatusCodes.Status200OK);
}

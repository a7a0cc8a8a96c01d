using Microsoft.AspNetCore.Mvc;
using NightWatch.Pages.Layout;
using NightWatch.Pages.Links;
using NightWatch.Pages.Security;
using NightWatch.Store.Watches;
using NightWatch.Watchkeeping.Steering;

namespace NightWatch.Pages.Unsubscribing;

/// <summary>
/// Stops letters: for readers a page with a button, for mail programs the one-click POST of RFC 8058, which has neither cookie nor token.
/// </summary>
internal static class UnsubscribeRoutes
{
    private const string Digest = "digest";

    public static void Map(RouteGroupBuilder pages)
    {
        pages.MapGet("/unsubscribe", ShowAsync);
        pages.MapPost("/unsubscribe", StopAsync).WithMetadata(new OneClick());
    }

    private static async Task<IResult> ShowAsync(
        [FromQuery] string? w, [FromQuery] string? k, [FromQuery] string? of, LinkGate gate, CancellationToken stop) =>
        await gate.UnsubscribeAsync(w ?? "", k, stop) is { } watch
            ? PageResult.Of<UnsubscribePage>(new UnsubscribeModel(watch.Id, k!, watch.Site.Name, of == Digest))
            : PageResult.NothingHere();

    private static async Task<IResult> StopAsync(
        [FromQuery] string? w,
        [FromQuery] string? k,
        [FromQuery] string? of,
        HttpContext http,
        LinkGate gate,
        WatchStore watches,
        WatchSteering steering,
        CancellationToken stop)
    {
        // A link whose watch is deleted asks for what is so already; a mail program shall not be told that it failed.
        if (await watches.FindAsync(w ?? "", stop) is null) return Stopped("No letters come from that watch any more.");
        if (await gate.UnsubscribeAsync(w!, k, stop) is not { } watch) return PageResult.NothingHere();
        var which = http.Request.HasFormContentType ? (await http.Request.ReadFormAsync(stop))["which"].ToString() : "";
        if (of == Digest)
        {
            await steering.StopDigestAsync(watch.Id, stop);
            return Stopped("The weekly letter stops. Letters about good nights go on.");
        }

        if (which == "this")
        {
            await steering.UnsubscribeAsync(watch.Id, stop);
            return Stopped($"No letters about {watch.Site.Name} come any more.");
        }

        http.ForgetHere();
        // One click means the list, and the list is all letters to this address.
        foreach (var own in await watches.OfSubscriberAsync(watch.Subscriber.Address, stop)) await steering.UnsubscribeAsync(own.Id, stop);
        return Stopped("No letters come to this address any more.");
    }

    private static IResult Stopped(string says) =>
        PageResult.Says("Letters are stopped", StatusCodes.Status200OK, says, "Should you want them again, sign in and take a watch up.");
}

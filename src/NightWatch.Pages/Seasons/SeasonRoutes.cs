using System.Text;
using NightWatch.Delivery.Links;
using NightWatch.Letters.Calendar;
using NightWatch.Pages.Address;
using NightWatch.Pages.Layout;
using NightWatch.Pages.Links;
using NightWatch.Pictures;
using NightWatch.Watchkeeping.Evaluations;
using NightWatch.Words;
using NodaTime;

namespace NightWatch.Pages.Seasons;

/// <summary>The dark calendar of a watch's site, as a page and as a calendar file.</summary>
internal static class SeasonRoutes
{
    public static void MapSeasons(this IEndpointRouteBuilder pages)
    {
        pages.MapGet("/watches/{watchId}/season", ShowAsync);
        pages.MapGet("/watches/{watchId}/season.ics", FileAsync);
        pages.MapGet("/watches/{watchId}/season.svg", PictureAsync);
    }

    private static async Task<IResult> ShowAsync(
        string watchId,
        string? k,
        LinkGate gate,
        SharedSky sky,
        PageRoot root,
        StoredLinkSigner signer,
        IClock clock,
        HttpContext context,
        CancellationToken stop)
    {
        if (await gate.WatchAsync(watchId, k, stop) is not { } watch) return PageResult.NothingHere();
        context.Response.Headers.CacheControl = "private, no-cache";
        var calendar = SeasonPageModel.CalendarOf(watch, clock.GetCurrentInstant(), sky.Ephemeris);
        return PageResult.Of<SeasonPage>(SeasonPageModel.Of(watch, calendar, root, signer));
    }

    private static async Task<IResult> FileAsync(
        string watchId, string? k, LinkGate gate, SharedSky sky, IClock clock, HttpContext context, CancellationToken stop)
    {
        if (await gate.WatchAsync(watchId, k, stop) is not { } watch) return PageResult.NothingHere();
        context.Response.Headers.CacheControl = "private, no-cache";
        var now = clock.GetCurrentInstant();
        var text = SeasonCalendar.Text(SeasonPageModel.CalendarOf(watch, now, sky.Ephemeris), watch.Site.Position, watch.Site.Name, now);
        return Results.File(Encoding.UTF8.GetBytes(text), "text/calendar; charset=utf-8", $"dark-nights-{watch.Site.Id}.ics");
    }

    private static async Task<IResult> PictureAsync(
        string watchId, string? k, LinkGate gate, SharedSky sky, IClock clock, HttpContext context, CancellationToken stop)
    {
        if (await gate.WatchAsync(watchId, k, stop) is not { } watch) return PageResult.NothingHere();
        context.Response.Headers.CacheControl = "private, no-cache";
        var calendar = SeasonPageModel.CalendarOf(watch, clock.GetCurrentInstant(), sky.Ephemeris);
        return Results.Bytes(
            Encoding.UTF8.GetBytes(SeasonChart.Svg(calendar, SeasonPageModel.TitleOf(watch), Speech.To(watch))), "image/svg+xml");
    }
}

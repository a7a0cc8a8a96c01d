using System.Security.Cryptography;
using System.Text;
using Microsoft.Net.Http.Headers;
using NightWatch.Delivery.Links;
using NightWatch.Letters;
using NightWatch.Letters.Calendar;
using NightWatch.Letters.Links;
using NightWatch.Planning.Season;
using NightWatch.Store.Calendar;
using NightWatch.Store.Passes;
using NightWatch.Store.Watches;
using NightWatch.Watchkeeping.Evaluations;
using NodaTime;

namespace NightWatch.Pages.Calendars;

/// <summary>Every subscriber's nights as a calendar to follow, under an address that only they know and that can be revoked.</summary>
internal sealed class CalendarFeeds(
    CalendarFeedStore feeds,
    WatchStore watches,
    ToldNightStore told,
    LetterWriter letters,
    StoredLinkSigner signer,
    SharedSky sky,
    IClock clock)
{
    /// <summary>How far the dark season is shown: one lunation and the next two.</summary>
    private const int SeasonNights = 92;

    /// <summary>The feed's address, made at first use; null where there are no pages.</summary>
    public async Task<Uri?> LinkAsync(string address, CancellationToken stop = default) =>
        letters.Head.Links.CalendarFeed(await feeds.TokenAsync(address, Tokens(address), clock.GetCurrentInstant(), stop));

    /// <summary>Ends the address given out so far.</summary>
    /// <returns>The new one; null where there are no pages.</returns>
    public async Task<Uri?> RevokeAsync(string address, CancellationToken stop = default) =>
        letters.Head.Links.CalendarFeed(await feeds.RevokeAsync(address, Tokens(address), clock.GetCurrentInstant(), stop));

    /// <summary>What a token opens; null: nothing.</summary>
    public async Task<string?> TextAsync(string token, CancellationToken stop = default)
    {
        if (await feeds.AddressOfAsync(token, stop) is not { } address) return null;
        var now = clock.GetCurrentInstant();
        var parts = new List<WatchCalendar>();
        foreach (var watch in await watches.OfSubscriberAsync(address, stop))
        {
            if (watch.IsPausedAt(now)) continue;
            var today = now.InZone(watch.Site.Zone).Date;
            // Last night's entry stays until its morning.
            var nights = await told.FromAsync(watch.Id, today.PlusDays(-1), stop);
            var season = WatchSeason.Of(watch, today, SeasonNights, sky.Ephemeris);
            parts.Add(new WatchCalendar(watch, [.. nights.Select(memory => memory.Night)], season));
        }

        return SubscriberCalendar.Text(parts, letters.Head, now.InUtc().Date.AtStartOfDayInZone(DateTimeZone.Utc).ToInstant());
    }

    private Func<long, string> Tokens(string address) => generation => LetterLinks.CalendarKey(signer, address, generation);
}

/// <summary>Where calendar programs fetch the feeds.</summary>
internal static class CalendarFeedRoutes
{
    /// <summary>Maps "calendar/TOKEN.ics": a GET or HEAD, no session, an entity tag so that an unchanged calendar costs nothing.</summary>
    public static void MapCalendarFeeds(this WebApplication app) =>
        app.MapMethods(
            "/calendar/{token}.ics",
            [HttpMethods.Get, HttpMethods.Head],
            async (string token, HttpRequest request, HttpResponse response, CalendarFeeds feeds, CancellationToken stop) =>
            {
                if (await feeds.TextAsync(token, stop) is not { } text) return Results.NotFound();
                var bytes = Encoding.UTF8.GetBytes(text);
                var tag = new EntityTagHeaderValue($"\"{Convert.ToHexStringLower(SHA256.HashData(bytes).AsSpan(0, 16))}\"");
                response.Headers.CacheControl = "private, max-age=900";
                response.GetTypedHeaders().ETag = tag;
                return request
                    .GetTypedHeaders()
                    .IfNoneMatch.Any(known => known.Compare(tag, useStrongComparison: false) || known == EntityTagHeaderValue.Any)
                    ? Results.StatusCode(StatusCodes.Status304NotModified)
                    : Results.Bytes(bytes, "text/calendar; charset=utf-8");
            });
}

using NightWatch.Pages.Assets;
using NightWatch.Pages.Layout;
using NightWatch.Pages.Security;
using NightWatch.Planning.Verification.Outcomes;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Time;
using NightWatch.Store.Outcomes;
using NightWatch.Watchkeeping.Steering;
using NightWatch.Words;
using NodaTime;

namespace NightWatch.Pages.Nights;

/// <summary>
/// The night's page and what can be done from it. The link's signature is the right to read and to act; reading changes nothing.
/// </summary>
internal static class NightRoutes
{
    /// <summary>Where a night's page is, and everything of it below.</summary>
    public const string Night = "/watches/{watchId}/nights/{night}";

    public static IServiceCollection AddNightPages(this IServiceCollection services) =>
        services.AddSingleton<NightGate>().AddSingleton<PastNights>().AddSingleton<NightHandler>();

    public static void MapNights(this IEndpointRouteBuilder pages)
    {
        pages.MapGet(Night, ShowAsync);
        pages.MapGet(Night + "/debrief", AskAsync);
        pages.MapPost(Night + "/debrief", AnswerAsync).WithMetadata(new SignedByLink());
        pages.MapGet(Night + "/snooze", OfferSnoozeAsync);
        pages.MapPost(Night + "/snooze", SnoozeAsync).WithMetadata(new SignedByLink());
        SwitchRoutes.Map(pages);
        pages.MapGet("/offline.js", (PageAssets own, HttpContext http) =>
        {
            // Its name must stay, or the copies kept under the old one would outlive every change.
            http.Response.Headers.CacheControl = "no-cache";
            return Results.Bytes(own["offline.js"].Bytes, own["offline.js"].ContentType);
        });
    }

    /// <summary>What a steering that did not come about says.</summary>
    public static IResult Not(SteeringOutcome outcome) => outcome is SteeringOutcome.Refused refused
        ? PageResult.Says("That cannot be done", StatusCodes.Status409Conflict, refused.Why, "Nothing was changed.")
        : PageResult.NothingHere();

    private static async Task<IResult> ShowAsync([AsParameters] NightAsked asked, NightHandler handler)
    {
        if (await asked.OpenAsync() is not var (watch, date)) return PageResult.NothingHere();
        asked.Http.Response.Headers.CacheControl = "private, no-cache";
        return PageResult.Of<NightPage>(NightPageModel.Of(await handler.FindAsync(watch, date, asked.Stop), asked.Root, asked.Signer));
    }

    private static async Task<IResult> AskAsync([AsParameters] NightAsked asked, string? was, NightHandler handler)
    {
        if (await asked.OpenAsync() is not var (watch, date)) return PageResult.NothingHere();
        return PageResult.Of<DebriefPage>(
            new DebriefPageModel(
                Heading(watch, date), await handler.SaidAsync(watch, date, asked.Stop), OutcomeWords.Of(was), asked.LinksOf(watch, date)));
    }

    private static async Task<IResult> AnswerAsync([AsParameters] NightAsked asked, OutcomeStore outcomes, IClock clock)
    {
        if (await asked.OpenAsync() is not var (watch, date)) return PageResult.NothingHere();
        if (OutcomeWords.Of(await asked.FieldAsync("was")) is not { } outcome)
            return PageResult.Says(
                "That is none of the answers",
                StatusCodes.Status400BadRequest,
                $"Accepted: {string.Join(", ", OutcomeWords.All)}. Nothing was changed.");
        var now = clock.GetCurrentInstant();
        if (now < LocalClock.At(watch.Site.Zone, date, new LocalTime(18, 0)))
            return PageResult.Says(
                "That night has not come yet",
                StatusCodes.Status400BadRequest,
                "The answer can be given from its evening on. Nothing was changed.");
        await outcomes.PutAsync(watch.Id, date, outcome, OutcomeSource.Debrief, now, asked.Stop);
        return Back(asked.Http, asked.LinksOf(watch, date));
    }

    private static async Task<IResult> OfferSnoozeAsync([AsParameters] NightAsked asked, NightHandler handler)
    {
        if (await asked.OpenAsync() is not var (watch, date)) return PageResult.NothingHere();
        return PageResult.Of<SnoozePage>(
            new SnoozePageModel(Heading(watch, date), await handler.IsSnoozedAsync(watch, date, asked.Stop), asked.LinksOf(watch, date)));
    }

    private static async Task<IResult> SnoozeAsync([AsParameters] NightAsked asked, WatchSteering steering)
    {
        if (await asked.OpenAsync() is not var (watch, date)) return PageResult.NothingHere();
        var outcome = await asked.FieldAsync("again") is null
            ? await steering.SnoozeNightAsync(watch.Id, date, asked.Stop)
            : await steering.UnsnoozeNightAsync(watch.Id, date, asked.Stop);
        return outcome is SteeringOutcome.Done ? Back(asked.Http, asked.LinksOf(watch, date)) : Not(outcome);
    }

    private static string Heading(Watch watch, LocalDate night)
    {
        var speech = Speech.To(watch);
        return speech.Language.NightAt(night, watch.Site.Name, speech);
    }

    // 303: the answer to the form is to be read with GET, so that loading it again sends nothing again (RFC 9110, 15.4.4).
    private static IResult Back(HttpContext http, NightPageLinks links)
    {
        http.Response.Headers.Location = links.Night;
        return Results.StatusCode(StatusCodes.Status303SeeOther);
    }
}

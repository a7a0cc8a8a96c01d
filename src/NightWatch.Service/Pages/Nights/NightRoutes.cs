using NightWatch.Planning.Verification.Outcomes;
using NightWatch.Planning.Watches;
using NightWatch.Service.Pages.Assets;
using NightWatch.Service.Pages.Layout;
using NightWatch.Service.Pages.Links;
using NightWatch.Service.Pages.Security;
using NightWatch.Service.Steering;
using NightWatch.Store.Outcomes;
using NodaTime;
using NodaTime.Text;

namespace NightWatch.Service.Pages.Nights;

/// <summary>The night's page and what can be done from it. The link's signature is the right to read and to act; reading changes nothing.</summary>
internal static class NightRoutes
{
    private const string Night = "/watches/{watchId}/nights/{night}";

    /// <summary>Nights so far from today have no page: nothing is kept of them, and the ephemeris has an end.</summary>
    private const int MostDays = 1000;

    public static IServiceCollection AddNightPages(this IServiceCollection services) => services.AddSingleton<PastNights>().AddSingleton<NightDesk>();

    public static void MapNights(this IEndpointRouteBuilder pages)
    {
        pages.MapGet(Night, ShowAsync);
        pages.MapGet(Night + "/debrief", AskAsync);
        pages.MapPost(Night + "/debrief", AnswerAsync).WithMetadata(new SignedByLink());
        pages.MapGet(Night + "/snooze", OfferSnoozeAsync);
        pages.MapPost(Night + "/snooze", SnoozeAsync).WithMetadata(new SignedByLink());
        pages.MapGet("/offline.js", (PageAssets own, HttpContext context) =>
        {
            // Its name must stay, or the copies kept under the old one would outlive every change.
            context.Response.Headers.CacheControl = "no-cache";
            return Results.Bytes(own["offline.js"].Bytes, own["offline.js"].ContentType);
        });
    }

    private static async Task<IResult> ShowAsync(
        string watchId, string night, string? k, LinkGate gate, NightDesk desk, PageRoot root, StoredLinkSigner signer, IClock clock, HttpContext context, CancellationToken stop)
    {
        if (await OpenAsync(watchId, night, k, gate, clock, stop) is not var (watch, date)) return PageResult.NothingHere();
        context.Response.Headers.CacheControl = "private, no-cache";
        return PageResult.Of<NightPage>(NightPageModel.Of(await desk.FindAsync(watch, date, stop), root, signer));
    }

    private static async Task<IResult> AskAsync(
        string watchId, string night, string? k, string? was, LinkGate gate, OutcomeStore outcomes, PageRoot root, StoredLinkSigner signer, IClock clock, CancellationToken stop)
    {
        if (await OpenAsync(watchId, night, k, gate, clock, stop) is not var (watch, date)) return PageResult.NothingHere();
        var said = (await outcomes.OfNightAsync(watch.Id, date, stop)).FirstOrDefault(record => record.Source == OutcomeSource.Debrief)?.Outcome;
        return PageResult.Of<DebriefPage>(new DebriefPageModel(watch.Site.Name, date, said, OutcomeWords.Of(was), NightPageLinks.Of(watch, date, root, signer)));
    }

    private static async Task<IResult> AnswerAsync(
        string watchId, string night, string? k, HttpRequest request, LinkGate gate, OutcomeStore outcomes, PageRoot root, StoredLinkSigner signer, IClock clock, CancellationToken stop)
    {
        if (await OpenAsync(watchId, night, k, gate, clock, stop) is not var (watch, date)) return PageResult.NothingHere();
        if (OutcomeWords.Of(await FieldAsync(request, "was", stop)) is not { } outcome)
            return PageResult.Says("That is none of the answers", StatusCodes.Status400BadRequest, $"Accepted: {string.Join(", ", OutcomeWords.All)}. Nothing was changed.");
        if (clock.GetCurrentInstant() < date.At(new LocalTime(18, 0)).InZoneLeniently(watch.Site.Zone).ToInstant())
            return PageResult.Says("That night has not come yet", StatusCodes.Status400BadRequest, "The answer can be given from its evening on. Nothing was changed.");
        await outcomes.PutAsync(watch.Id, date, outcome, OutcomeSource.Debrief, clock.GetCurrentInstant(), stop);
        return Back(NightPageLinks.Of(watch, date, root, signer));
    }

    private static async Task<IResult> OfferSnoozeAsync(
        string watchId, string night, string? k, LinkGate gate, NightDesk desk, PageRoot root, StoredLinkSigner signer, IClock clock, CancellationToken stop)
    {
        if (await OpenAsync(watchId, night, k, gate, clock, stop) is not var (watch, date)) return PageResult.NothingHere();
        return PageResult.Of<SnoozePage>(new SnoozePageModel(watch.Site.Name, date, await desk.IsSnoozedAsync(watch, date, stop), NightPageLinks.Of(watch, date, root, signer)));
    }

    private static async Task<IResult> SnoozeAsync(
        string watchId, string night, string? k, HttpRequest request, LinkGate gate, Steering.Steering steering, PageRoot root, StoredLinkSigner signer, IClock clock, CancellationToken stop)
    {
        if (await OpenAsync(watchId, night, k, gate, clock, stop) is not var (watch, date)) return PageResult.NothingHere();
        return await (await FieldAsync(request, "again", stop) is null ? steering.SnoozeNightAsync(watch.Id, date, stop) : steering.UnsnoozeNightAsync(watch.Id, date, stop)) switch
        {
            SteeringOutcome.Done => Back(NightPageLinks.Of(watch, date, root, signer)),
            SteeringOutcome.Refused refused => PageResult.Says("That cannot be done", StatusCodes.Status409Conflict, refused.Why, "Nothing was changed."),
            _ => PageResult.NothingHere(),
        };
    }

    // 303: the answer to the form is to be read with GET, so that loading it again sends nothing again (RFC 9110, 15.4.4).
    private static SeeOther Back(NightPageLinks links) => new SeeOther(links.Night);

    // A form whose only button has no name comes with an empty body.
    private static async Task<string?> FieldAsync(HttpRequest request, string name, CancellationToken stop) =>
        request.HasFormContentType && (await request.ReadFormAsync(stop)).TryGetValue(name, out var value) ? value.ToString() : null;

    private static async Task<(Watch Watch, LocalDate Night)?> OpenAsync(string watchId, string night, string? key, LinkGate gate, IClock clock, CancellationToken stop)
    {
        if (!LocalDatePattern.Iso.Parse(night).TryGetValue(default, out var date)) return null;
        if (Math.Abs((long)Period.DaysBetween(clock.GetCurrentInstant().InUtc().Date, date)) > MostDays) return null;
        return await gate.NightAsync(watchId, date, key, stop) is { } watch ? (watch, date) : null;
    }

    private sealed class SeeOther(string address) : IResult
    {
        public Task ExecuteAsync(HttpContext context)
        {
            context.Response.StatusCode = StatusCodes.Status303SeeOther;
            context.Response.Headers.Location = address;
            return Task.CompletedTask;
        }
    }
}

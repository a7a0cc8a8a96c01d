using Microsoft.AspNetCore.Mvc;
using NightWatch.Pages.Address;
using NightWatch.Pages.Layout;
using NightWatch.Pages.Subscribers;
using NightWatch.Pages.Watches;
using NightWatch.Planning.Watches;
using NightWatch.Store.Watches;
using NightWatch.Watchkeeping.Passes;
using NightWatch.Words;
using NodaTime;

namespace NightWatch.Pages.SignUp;

/// <summary>From a place to a watch that its address has confirmed.</summary>
internal static class SignUpRoutes
{
    public static void Map(RouteGroupBuilder pages)
    {
        pages.MapGet("/", async (HttpContext http, PageOptions options, Sessions sessions, CancellationToken stop) =>
            Front(options.OpenSignUp || await sessions.WhoAsync(http, stop) is not null, "", null, []));
        pages.MapGet("/new", BeginAsync);
        pages.MapPost("/new", SendAsync);
        pages.MapGet("/confirm", ShowAsync);
        pages.MapPost("/confirm", ConfirmAsync);
    }

    private static IResult Front(bool isOpen, string typed, string? why, IReadOnlyList<PlaceChoice> choices) =>
        PageResult.Of<FrontPage>(new FrontModel(isOpen, typed, why, choices));

    private static async Task<IResult> BeginAsync(
        [FromQuery] string? place,
        [FromQuery] string? name,
        HttpContext http,
        PageOptions options,
        Sessions sessions,
        IClock clock,
        CancellationToken stop)
    {
        var who = await sessions.WhoAsync(http, stop);
        if (!options.OpenSignUp && who is null) return Closed();
        return PlaceFinder.Find(place ?? "", name ?? "") switch
        {
            FoundPlace.Point point => New(
                WatchFormModel.Of(
                    BlankWatch.FormAt(point.LatitudeDeg, point.LongitudeDeg, point.ElevationM, Line(point.Name)),
                    null,
                    clock.GetCurrentInstant()),
                who),
            FoundPlace.Several several => Front(true, place ?? "", null, several.Choices),
            FoundPlace.None none => Front(true, place ?? "", place is null ? null : none.Why, []),
            var other => throw new InvalidOperationException($"{other.GetType()} has no page."),
        };
    }

    private static async Task<IResult> SendAsync(
        HttpContext http,
        PageOptions options,
        SignUpHandler handler,
        Sessions sessions,
        WatchStore watches,
        DuePlanner planner,
        IClock clock,
        CancellationToken stop)
    {
        var who = await sessions.WhoAsync(http, stop);
        if (!options.OpenSignUp && who is null) return Closed();
        var values = FormValues.Of(await http.Request.ReadFormAsync(stop));
        var wish = values["do"];
        var blank = BlankWatch.At(0, 0, values["site.name"]);
        // Looking needs no address yet; a wrong one is told where letters are asked for.
        var (watch, form) = WatchForm.Read(
            wish == "ask" ? blank with { Subscriber = new Subscriber("", values["address"]) } : blank, values);
        var now = clock.GetCurrentInstant();
        if (watch is null || wish is not ("ask" or "keep"))
        {
            // Half a form is no mistake while one looks around.
            var shown =
                wish == "look" ? form with { Faults = form.Faults.Where(fault => values[fault.Key].Length > 0).ToDictionary() } : form;
            return New(
                WatchFormModel.Of(shown, watch, now),
                who,
                wish is "ask" or "keep" ? StatusCodes.Status400BadRequest : StatusCodes.Status200OK);
        }

        if (wish == "keep")
        {
            if (who is null)
                return PageResult.Says(
                    "You are not signed in any more",
                    StatusCodes.Status403Forbidden,
                    "Nothing was kept. Sign in again, in another window, and send the form once more.");
            if (!await handler.HasRoomAsync(who, stop))
                return PageResult.Says(
                    "That is one watch too many",
                    StatusCodes.Status409Conflict,
                    Speech.ToAnybody.Language.WatchesAreEnough(SignUpHandler.MostWatches, isSignedIn: true));
            var own = watch with { Subscriber = new Subscriber("", who) };
            await watches.PutAsync(own, now, stop);
            await planner.PlanAsync(who, now, stop);
            return http.SeeOther("watches");
        }

        return await handler.AskAsync(watch, http.Connection.RemoteIpAddress, stop)
            ? PageResult.Says(
                "Now look into your mailbox",
                StatusCodes.Status200OK,
                "A letter is on its way to the address you gave. It has a link to a page with a button: press that, and the watch begins.",
                "If none comes within ten minutes, look into the junk folder. An address gets a few such letters a day at most.")
            : SignInRoutes.TooMany();
    }

    private static async Task<IResult> ShowAsync([FromQuery] string? t, SignUpHandler handler, CancellationToken stop) =>
        await handler.FindAsync(t, stop) is { } watch
            ? PageResult.Of<ConfirmPage>(
                new ConfirmModel(t!, watch.Site.Name, WatchFields.Coordinates(watch.Site.Position), watch.Subscriber.Address))
            : PageResult.NothingHere();

    private static async Task<IResult> ConfirmAsync(HttpContext http, SignUpHandler handler, Sessions sessions, CancellationToken stop)
    {
        var token = (await http.Request.ReadFormAsync(stop))["t"].ToString();
        if (await handler.FindAsync(token, stop) is not { } asked) return PageResult.NothingHere();
        if (!await handler.HasRoomAsync(asked.Subscriber.Address, stop))
            return PageResult.Says(
                "That is one watch too many",
                StatusCodes.Status409Conflict,
                Speech.ToAnybody.Language.WatchesAreEnough(SignUpHandler.MostWatches, isSignedIn: false));
        if (await handler.ConfirmAsync(token, stop) is not { } watch) return PageResult.NothingHere();
        // Who reads the letter has proven the address as well as by a letter for signing in.
        await sessions.BeginAsync(http, watch.Subscriber.Address, stop);
        return http.SeeOther("watches?new=1");
    }

    private static IResult Closed() =>
        PageResult.Says("Sign-up is closed", StatusCodes.Status403Forbidden, "Watches of this installation are set up by whoever runs it.");

    private static IResult New(WatchFormModel fields, string? who, int status = StatusCodes.Status200OK) =>
        PageResult.Of<NewWatchPage>(new NewWatchModel(fields, who), status);

    // A name out of an address bar goes into a field; the field's own rule says the rest.
    private static string Line(string name) => name.Length > 200 ? name[..200] : name;
}

using Microsoft.AspNetCore.Mvc;
using NightWatch.Letters;
using NightWatch.Pages.Layout;
using NightWatch.Pages.Security;
using NightWatch.Pages.Subscribers;
using NightWatch.Pages.Watches;
using NightWatch.Planning.Watches;
using NightWatch.Store.Outbox;
using NightWatch.Store.Subscribers;
using NightWatch.Store.Watches;
using NightWatch.Watchkeeping.Passes;
using NightWatch.Watchkeeping.Steering;
using NodaTime;
using NodaTime.Text;

namespace NightWatch.Pages.MyWatches;

/// <summary>A subscriber's own pages. Every handler asks whose watch it is; another's is as good as none.</summary>
internal static class MyWatchesRoutes
{
    public static void Map(RouteGroupBuilder pages)
    {
        var own = pages.MapGroup("").Behind<SignedInOnly>();
        own.MapGet("/watches", ListAsync);
        own.MapGet("/watches/{id}/edit", EditAsync);
        own.MapPost("/watches/{id}/edit", KeepAsync);
        own.MapPost("/watches/{id}/pause", PauseAsync);
        own.MapPost("/watches/{id}/resume", ResumeAsync);
        own.MapPost("/watches/{id}/delete", RemoveAsync);
        own.MapPost("/test-letter", TestAsync);
        HorizonRoutes.Map(own);
        WholeAccountRoutes.Map(own);
    }

    private static async Task<IResult> ListAsync(
        HttpContext http,
        [FromQuery(Name = "new")] string? isNew,
        [FromQuery] string? done,
        MyWatchesHandler handler,
        CancellationToken stop) =>
        PageResult.Of<MyWatchesPage>(
            await handler.ListAsync(
                SignedInOnly.Who(http),
                isNew is null
                    ? NoteOf(done)
                    : "The watch begins. The first look comes this evening or tomorrow morning; a letter when there is something to tell.",
                stop));

    private static async Task<IResult> EditAsync(
        string id, HttpContext http, MyWatchesHandler handler, IClock clock, CancellationToken stop) =>
        await handler.OwnAsync(SignedInOnly.Who(http), id, stop) is { } watch
            ? Edit(watch, WatchFormModel.Of(WatchForm.Of(watch), watch, clock.GetCurrentInstant()))
            : PageResult.NothingHere();

    private static async Task<IResult> KeepAsync(
        string id, HttpContext http, MyWatchesHandler handler, WatchStore watches, DuePlanner planner, IClock clock, CancellationToken stop)
    {
        if (await handler.OwnAsync(SignedInOnly.Who(http), id, stop) is not { } before) return PageResult.NothingHere();
        var values = FormValues.Of(await http.Request.ReadFormAsync(stop));
        var (watch, form) = WatchForm.Read(before, values);
        var now = clock.GetCurrentInstant();
        if (watch is null || values["do"] != "keep")
            return Edit(
                before,
                WatchFormModel.Of(form, watch, now),
                watch is null && values["do"] == "keep" ? StatusCodes.Status400BadRequest : StatusCodes.Status200OK);
        await watches.PutAsync(watch, now, stop);
        await planner.PlanAsync(watch.Subscriber.Address, now, stop);
        return http.SeeOther("watches?done=kept");
    }

    private static async Task<IResult> PauseAsync(
        string id,
        HttpContext http,
        MyWatchesHandler handler,
        WatchStore watches,
        WatchSteering steering,
        IClock clock,
        CancellationToken stop)
    {
        if (await handler.OwnAsync(SignedInOnly.Who(http), id, stop) is null) return PageResult.NothingHere();
        var until = (await http.Request.ReadFormAsync(stop))["until"].ToString().Trim();
        if (until.Length == 0)
        {
            await watches.PauseAsync(id, paused: true, clock.GetCurrentInstant(), stop);
            return http.SeeOther("watches?done=paused");
        }

        if (!LocalDatePattern.Iso.Parse(until).TryGetValue(default, out var date))
            return Refused($"'{until}' is no date; accepted: a date such as 2027-06-04.");
        return await steering.PauseUntilAsync(id, date, stop) is SteeringOutcome.Refused refused
            ? Refused(refused.Why)
            : http.SeeOther("watches?done=paused");
    }

    private static async Task<IResult> ResumeAsync(
        string id, HttpContext http, MyWatchesHandler handler, WatchStore watches, DuePlanner planner, IClock clock, CancellationToken stop)
    {
        if (await handler.OwnAsync(SignedInOnly.Who(http), id, stop) is null) return PageResult.NothingHere();
        var now = clock.GetCurrentInstant();
        await watches.PauseAsync(id, paused: false, now, stop);
        await planner.PlanAsync(SignedInOnly.Who(http), now, stop);
        return http.SeeOther("watches?done=resumed");
    }

    private static async Task<IResult> RemoveAsync(
        string id, HttpContext http, MyWatchesHandler handler, SubscriberStore subscribers, IClock clock, CancellationToken stop)
    {
        if (await handler.OwnAsync(SignedInOnly.Who(http), id, stop) is null) return PageResult.NothingHere();
        if ((await http.Request.ReadFormAsync(stop))["sure"] != "on")
            return Refused("The box beside 'Delete this watch' was not ticked, so nothing was deleted.");
        await subscribers.EraseWatchAsync(id, clock.GetCurrentInstant(), stop);
        return http.SeeOther("watches?done=deleted");
    }

    private static async Task<IResult> TestAsync(
        HttpContext http, LetterWriter letters, MailRations rations, OutboxStore outbox, IClock clock, CancellationToken stop)
    {
        var (address, now) = (SignedInOnly.Who(http), clock.GetCurrentInstant());
        if (!await rations.TakeToAddressAsync("test", address, now, stop))
            return Refused("A few test letters a day are enough; try again tomorrow.");
        await outbox.EnqueueAsync([OutboxDraft.Of(await letters.WriteTestAsync(address, now, stop), now)], now, stop);
        return http.SeeOther("watches?done=test");
    }

    private static IResult Edit(Watch watch, WatchFormModel model, int status = StatusCodes.Status200OK) =>
        PageResult.Of<EditPage>(
            new Dictionary<string, object?>
            {
                [nameof(EditPage.Id)] = watch.Id,
                [nameof(EditPage.Name)] = watch.Site.Name,
                [nameof(EditPage.Model)] = model,
            },
            status);

    private static IResult Refused(string why) => PageResult.Says("That was not done", StatusCodes.Status400BadRequest, why);

    // Words of our own for what stands in the address, so that nobody can put theirs on the page.
    private static string? NoteOf(string? done) => done switch
    {
        "kept" => "The changes are kept. They hold from the next look on.",
        "paused" => "Paused. Letters that waited are held back.",
        "resumed" => "It looks again every day.",
        "deleted" => "The watch is deleted.",
        "test" => "A test letter is on its way.",
        _ => null,
    };
}

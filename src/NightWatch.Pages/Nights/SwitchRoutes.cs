using NightWatch.Pages.Layout;
using NightWatch.Pages.Security;
using NightWatch.Planning.Watches;
using NightWatch.Store.Outbox;
using NightWatch.Store.Watches;
using NightWatch.Watchkeeping.Steering;
using NightWatch.Words;
using NodaTime;
using NodaTime.Text;

namespace NightWatch.Pages.Nights;

/// <summary>Another night or place instead of one that falls through, as a form and by its button alone.</summary>
internal static class SwitchRoutes
{
    private const string Switch = NightRoutes.Night + "/switch";

    public static void Map(IEndpointRouteBuilder pages)
    {
        pages.MapGet(Switch, OfferAsync);
        pages.MapPost(Switch, SwitchAsync).WithMetadata(new SignedByLink());
    }

    private static async Task<IResult> OfferAsync([AsParameters] NightAsked asked, string? to, string? on, WatchStore watches) =>
        await ChoiceAsync(asked, to, on, watches) is { } choice ? PageResult.Of<SwitchPage>(choice.Page(asked)) : PageResult.NothingHere();

    private static async Task<IResult> SwitchAsync(
        [AsParameters] NightAsked asked, string? to, string? on, WatchStore watches, WatchSteering steering)
    {
        if (await ChoiceAsync(asked, to, on, watches) is not { } choice) return PageResult.NothingHere();
        var outcome = await steering.SwitchNightAsync(
            new WatchNight(choice.From.Id, choice.Night), new WatchNight(choice.To.Id, choice.On), asked.Stop);
        return outcome is SteeringOutcome.Done done
            ? PageResult.Of<SwitchPage>(choice.Page(asked) with { Says = done.Says })
            : NightRoutes.Not(outcome);
    }

    // The signature opens one subscriber's night; what it is switched to must be theirs as well, or a link would tell what others watch.
    private static async Task<Choice?> ChoiceAsync(NightAsked asked, string? to, string? on, WatchStore watches)
    {
        if (await asked.OpenAsync() is not var (from, date)) return null;
        if (asked.Gate.DateOf(on) is not { } toNight || await watches.FindAsync(to ?? "", asked.Stop) is not { } chosen) return null;
        return from.Subscriber.Key() == chosen.Subscriber.Key() ? new Choice(from, date, chosen, toNight) : null;
    }

    private sealed record Choice(Watch From, LocalDate Night, Watch To, LocalDate On)
    {
        public SwitchPageModel Page(NightAsked asked)
        {
            var links = asked.LinksOf(From, Night);
            var action = $"{links.Switch}&to={Uri.EscapeDataString(To.Id)}&on={LocalDatePattern.Iso.Format(On)}";
            var speech = Speech.To(From);
            var words = speech.Language;
            return new SwitchPageModel(
                words.InsteadOf(Night, From.Site.Name, speech),
                words.GoingTo(On, To.Site.Name, speech),
                words.SwitchTo(On, speech),
                action,
                asked.LinksOf(To, On).Night,
                links);
        }
    }
}

using NightWatch.Delivery.Links;
using NightWatch.Pages.Address;
using NightWatch.Pages.Layout;
using NightWatch.Pages.Security;
using NightWatch.Planning.Watches;
using NightWatch.Store.Outbox;
using NightWatch.Store.Watches;
using NightWatch.Watchkeeping.Steering;
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

    private static async Task<IResult> OfferAsync(
        string watchId, string night, string? k, string? to, string? on, NightGate gate, WatchStore watches, PageRoot root, StoredLinkSigner signer, CancellationToken stop) =>
        await ChoiceAsync(watchId, night, k, to, on, gate, watches, stop) is { } choice ? PageResult.Of<SwitchPage>(choice.Page(root, signer)) : PageResult.NothingHere();

    private static async Task<IResult> SwitchAsync(
        string watchId, string night, string? k, string? to, string? on, NightGate gate, WatchStore watches, Steering steering, PageRoot root, StoredLinkSigner signer, CancellationToken stop)
    {
        if (await ChoiceAsync(watchId, night, k, to, on, gate, watches, stop) is not { } choice) return PageResult.NothingHere();
        var outcome = await steering.SwitchNightAsync(new WatchNight(choice.From.Id, choice.Night), new WatchNight(choice.To.Id, choice.On), stop);
        return outcome is SteeringOutcome.Done done ? PageResult.Of<SwitchPage>(choice.Page(root, signer) with { Says = done.Says }) : NightRoutes.Not(outcome);
    }

    // The signature opens one subscriber's night; what it is switched to must be theirs as well, or a link would tell what others watch.
    private static async Task<Choice?> ChoiceAsync(string watchId, string night, string? k, string? to, string? on, NightGate gate, WatchStore watches, CancellationToken stop)
    {
        if (await gate.OpenAsync(watchId, night, k, stop) is not var (from, date)) return null;
        if (gate.DateOf(on) is not { } toNight || await watches.FindAsync(to ?? "", stop) is not { } chosen) return null;
        return from.Subscriber.Key() == chosen.Subscriber.Key() ? new Choice(from, date, chosen, toNight) : null;
    }

    private sealed record Choice(Watch From, LocalDate Night, Watch To, LocalDate On)
    {
        public SwitchPageModel Page(PageRoot root, StoredLinkSigner signer)
        {
            var links = NightPageLinks.Of(From, Night, root, signer);
            var action = $"{links.Switch}&to={Uri.EscapeDataString(To.Id)}&on={LocalDatePattern.Iso.Format(On)}";
            return new SwitchPageModel(From.Site.Name, Night, To.Site.Name, On, action, NightPageLinks.Of(To, On, root, signer).Night, links);
        }
    }
}

using MimeKit;
using NightWatch.Letters.Drafts;
using NightWatch.Letters.Links;
using NightWatch.Letters.Policy;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Places;
using NodaTime;

namespace NightWatch.Letters.Tests.Plans;

/// <summary>One night of Inés Robledo's told through every letter, each draft coming out of the policy itself.</summary>
internal static class TestDrafts
{
    public static LetterHead Head { get; } = new(
        new MailboxAddress("NightWatch", "watch@nightwatch.example"), "nightwatch.example", new Uri("https://nightwatch.example/"))
    {
        Signer = new LinkSigner("the key of the golden letters"u8.ToArray()),
    };

    public static ToldNight Nothing { get; } = new() { WatchId = TestPlans.CoreWatch.Id, Night = TestPlans.Night };

    public static Watch SaltShelf { get; } = TestPlans.CoreWatch with
    {
        Id = "salt-shelf-core",
        Site = new Site { Id = "salt-shelf", Name = "Salt shelf", Position = new GeoPosition(40.9, -0.3, 870), Zone = TestSky.Madrid },
    };

    private static PolicyDecision Told => Decide(PassKind.Evening, Nothing, VerdictClass.Go, TestPlans.At(19, 0, -2));

    private static PolicyDecision Morning => Decide(PassKind.Morning, Told.Next, VerdictClass.Go, TestPlans.At(7));

    private static PolicyDecision Off => Decide(PassKind.SameDay, Morning.Next, VerdictClass.NoGo, TestPlans.At(16, 30));

    public static LetterDraft Outlook => Draft(Told);

    public static LetterDraft MarginalOutlook => Draft(Decide(PassKind.Evening, Nothing, VerdictClass.Marginal, TestPlans.At(19, 0, -1), 0.65));

    public static LetterDraft MorningTimeline => Draft(Morning);

    public static LetterDraft WarningOff => Draft(Off, Better);

    public static LetterDraft WarningBackOn => Draft(Decide(PassKind.SameDay, Off.Next, VerdictClass.Go, TestPlans.At(17, 30)));

    public static LetterDraft StandDown => Draft(Decide(PassKind.LeaveBy, Morning.Next, VerdictClass.NoGo, TestPlans.At(18, 45)));

    public static LetterDraft Debrief => Draft(Decide(PassKind.After, Morning.Next, VerdictClass.Go, TestPlans.At(7, 0, 1)));

    public static LetterDraft Imperial => MorningTimeline.With(watch => watch with { Letters = watch.Letters with { Units = UnitSystem.Imperial } });

    public static LetterDraft SwitchedAway => Draft(SubscriberWishes.StandDown(Morning.Next, TestPlans.Of(VerdictClass.Go, madeAt: TestPlans.At(15)), TestPlans.At(15), new Wish.SwitchedTo(TestPlans.Of(VerdictClass.Go, watch: SaltShelf))));

    public static LetterDraft SwitchedTo => Draft(SubscriberWishes.Choose(
        Nothing with { WatchId = SaltShelf.Id }, TestPlans.Of(VerdictClass.Marginal, watch: SaltShelf, madeAt: TestPlans.At(19, 0, -1)), TestPlans.At(19, 0, -1), new Wish.SwitchedFrom(TestPlans.Of(VerdictClass.Go))));

    public static IReadOnlyList<(string Name, LetterDraft Draft)> All =>
    [
        ("outlook", Outlook), ("outlook-marginal", MarginalOutlook), ("morning-timeline", MorningTimeline), ("reschedule-off", WarningOff),
        ("reschedule-back-on", WarningBackOn), ("stand-down", StandDown), ("debrief", Debrief), ("morning-timeline-imperial", Imperial),
        ("switched-away", SwitchedAway), ("switched-to", SwitchedTo),
    ];

    /// <summary>The same draft with another watch's words in its plan.</summary>
    public static LetterDraft With(this LetterDraft draft, Func<Watch, Watch> change)
    {
        var orders = draft.Orders.Select(o => o with { Plan = o.Plan with { Watch = change(o.Plan.Watch) } }).ToList();
        return draft with { Orders = orders };
    }

    private static Dictionary<string, IReadOnlyList<Alternative>> Better => new()
    {
        [TestPlans.CoreWatch.Id] =
        [
            new Alternative(TestPlans.Of(VerdictClass.Go, 0.74, watch: SaltShelf), 86),
            new Alternative(TestPlans.Of(VerdictClass.Go, 0.69, night: TestPlans.Night.PlusDays(1)), null),
            new Alternative(TestPlans.Of(VerdictClass.Marginal, night: TestPlans.Night.PlusDays(2)), null),
        ],
    };

    private static PolicyDecision Decide(PassKind pass, ToldNight before, VerdictClass now, Instant at, double chance = double.NaN) =>
        LetterPolicy.Decide(pass, before, TestPlans.Of(now, chance, madeAt: at), at);

    private static LetterDraft Draft(PolicyDecision decision, IReadOnlyDictionary<string, IReadOnlyList<Alternative>>? alternatives = null)
    {
        var order = decision.Letter ?? throw new InvalidOperationException(decision.Why);
        return new LetterDraft
        {
            Orders = [order],
            Alternatives = alternatives ?? new Dictionary<string, IReadOnlyList<Alternative>>(),
            Now = order.Plan.MadeAt,
        };
    }
}

using MimeKit;
using NightWatch.Letters.Drafts;
using NightWatch.Letters.Links;
using NightWatch.Letters.Policy;
using NightWatch.Planning.Watches;

namespace NightWatch.Letters.Tests.Plans;

/// <summary>Every letter to Inés Robledo, each out of a story whose weather was chosen for what the letter's name says.</summary>
internal static class TestDrafts
{
    public static LetterHead Head { get; } = new(
        new MailboxAddress("NightWatch", "watch@nightwatch.example"), "nightwatch.example", new Uri("https://nightwatch.example/"))
    {
        Signer = new LinkSigner("the key of the golden letters"u8.ToArray()),
    };

    /// <summary>Clear in every run.</summary>
    public const long Fair = 0;

    // Clear until the run of the last noon, which has a front come early.
    private static readonly Story FrontComesEarly = new(2978, Ines.CoreWatch);

    // The runs between Wednesday and Friday noon see a front that the others do not.
    private static readonly Story FrontComesAndGoes = new(617, Ines.CoreWatch);

    private static readonly Story StaysFair = new(Fair, Ines.CoreWatch);

    // Some cloud, and air so damp that a lens without a heater gets wet.
    private const long SomeCloudAndDew = 134;

    private static readonly Story WithoutHeater = new(
        SomeCloudAndDew,
        Ines.CoreWatch with
        {
            Kit = Ines.CoreWatch.Kit with { DewHeaterW = 0 },
        });

    // Cloud in every run from Saturday on; a watch without checks on the day hears of it at leave-by.
    private static readonly Story CloudAfterAll = new(171, Ines.CoreWatch with { Letters = new LetterSettings { SameDayChecks = [] } });

    private static readonly Story InImperialUnits = new(
        2978,
        Ines.CoreWatch with
        {
            Letters = new LetterSettings { Units = UnitSystem.Imperial },
        });

    public static LetterDraft Outlook { get; } = FrontComesEarly.Letter(LetterKind.Outlook);

    public static LetterDraft MarginalOutlook { get; } = WithoutHeater.Letter(LetterKind.Outlook);

    public static LetterDraft MorningTimeline { get; } = FrontComesEarly.Letter(LetterKind.MorningTimeline);

    public static LetterDraft WarningOff { get; } = FrontComesEarly.Letter(LetterKind.RescheduleWarning);

    /// <summary>The outlook, the warning that the night is off and the one that it is on again.</summary>
    public static IReadOnlyList<LetterDraft> OffAndBackOn { get; } =
        [FrontComesAndGoes.Letter(LetterKind.Outlook), .. FrontComesAndGoes.Letters(LetterKind.RescheduleWarning)];

    public static LetterDraft StandDown { get; } = CloudAfterAll.Letter(LetterKind.StandDown);

    public static LetterDraft Debrief { get; } = StaysFair.Letter(LetterKind.Debrief);

    public static LetterDraft Imperial { get; } = InImperialUnits.Letter(LetterKind.MorningTimeline);

    public static LetterDraft SwitchedAway { get; } = Away();

    public static LetterDraft SwitchedTo { get; } = To();

    public static IReadOnlyList<(string Name, LetterDraft Draft)> All { get; } =
    [
        ("outlook", Outlook), ("outlook-marginal", MarginalOutlook), ("morning-timeline", MorningTimeline), ("reschedule-off", WarningOff),
        ("reschedule-back-on", OffAndBackOn[^1]), ("stand-down", StandDown), ("debrief", Debrief), ("morning-timeline-imperial", Imperial),
        ("switched-away", SwitchedAway), ("switched-to", SwitchedTo),
    ];

    /// <summary>A draft of one order, written when its plan was made.</summary>
    public static LetterDraft Of(LetterOrder order) => new() { Orders = [order], Now = order.Plan.MadeAt };

    /// <summary>The same draft with another watch's words in its plan.</summary>
    public static LetterDraft With(this LetterDraft draft, Func<Watch, Watch> change)
    {
        var orders = draft.Orders.Select(o => o with { Plan = o.Plan with { Watch = change(o.Plan.Watch) } }).ToList();
        return draft with { Orders = orders };
    }

    private static LetterDraft Away()
    {
        var now = Ines.At(15);
        var there = new InventedWeather(Fair).Plan(Ines.SaltShelf, Ines.Night, now);
        return Of(SubscriberWishes.StandDown(StaysFair.ToldAt(now), StaysFair.PlanAt(now), now, new Wish.SwitchedTo(there)).Letter!);
    }

    private static LetterDraft To()
    {
        var now = Ines.At(19, 0, -1);
        var there = new InventedWeather(SomeCloudAndDew).Plan(Ines.SaltShelf, Ines.Night, now);
        var nothing = new ToldNight { WatchId = Ines.SaltShelf.Id, Night = Ines.Night };
        return Of(SubscriberWishes.Choose(nothing, there, now, new Wish.SwitchedFrom(WithoutHeater.PlanAt(now))).Letter!);
    }
}

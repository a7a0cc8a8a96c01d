using CsCheck;
using NightWatch.Letters.Policy;
using NightWatch.Letters.Tests.Plans;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Watches;
using NodaTime;

namespace NightWatch.Letters.Tests.Policy;

/// <summary>What the world and the service do around one pass.</summary>
internal enum Mishap
{
    None,

    /// <summary>The service was down.</summary>
    Missed,

    /// <summary>Killed before the decision was stored: letter and memory are both gone, the pass runs again.</summary>
    KilledBeforeSave,

    /// <summary>Killed after: the pass runs again on the new memory.</summary>
    RunTwice,
}

/// <summary>One pass of a history.</summary>
internal sealed record Look(
    PassKind Pass, int DayOffset, LocalTime At, int DelayMin, Mishap Mishap, VerdictClass Class, double Chance, bool NewRun,
    bool HasForecast);

/// <summary>What the subscriber does about the night themselves.</summary>
internal enum Act
{
    Snooze,
    Unsnooze,

    /// <summary>Switches to another night.</summary>
    Leave,

    /// <summary>Switches to this night from another one.</summary>
    Choose,

    /// <summary>Lets the watch rest until some days from now.</summary>
    Rest,
}

/// <summary>An act at a time; the look says what is true then.</summary>
internal sealed record Acting(Act Act, int DayOffset, LocalTime At, int RestDays, Look Sees);

/// <summary>A random life of one night, from four evenings before to the morning after.</summary>
internal sealed record History(
    string Zone, LocalDate Night, LocalTime LeaveAt, int LeaveDayOffset, LocalTime QuietFrom, IReadOnlyList<Look> Looks)
{
    /// <summary>The subscriber's own acts, in the order of their time.</summary>
    public IReadOnlyList<Acting> Acts { get; init; } = [];

    private static readonly Gen<VerdictClass> Class = Gen.Enum<VerdictClass>();

    private static readonly Gen<Mishap> AnyMishap = Gen.Frequency(
        (70, Gen.Const(Mishap.None)),
        (14, Gen.Const(Mishap.Missed)),
        (8, Gen.Const(Mishap.KilledBeforeSave)),
        (8, Gen.Const(Mishap.RunTwice)));

    private static readonly Gen<int> Delay = Gen.Frequency((80, Gen.Const(0)), (15, Gen.Int[1, 90]), (5, Gen.Int[91, 900]));

    private static readonly (PassKind Pass, int Day, LocalTime At)[] Passes =
    [
        .. Enumerable.Range(-4, 5).Select(day => (PassKind.Evening, day, new LocalTime(19, 0))),
        (PassKind.Morning, 0, new LocalTime(7, 0)),
        (PassKind.SameDay, 0, new LocalTime(11, 0)),
        (PassKind.SameDay, 0, new LocalTime(14, 0)),
        (PassKind.SameDay, 0, new LocalTime(16, 30)),
        (PassKind.LeaveBy, 0, LocalTime.Midnight),
        (PassKind.After, 1, new LocalTime(7, 0)),
    ];

    private static readonly Gen<Look> AnyLook = Gen.Select(
            AnyMishap,
            Delay,
            Class,
            Gen.Double[0.05, 0.95],
            Gen.Frequency((75, Gen.Const(true)), (25, Gen.Const(false))),
            Gen.Frequency((92, Gen.Const(true)), (8, Gen.Const(false))))
        .Select(
            (mishap, delay, verdict, chance, newRun, has) =>
                new Look(PassKind.SameDay, 0, default, delay, mishap, has ? verdict : VerdictClass.Marginal, chance, newRun, has));

    /// <summary>Zones and nights include clock changes: Madrid and Lord Howe (half an hour) in spring and autumn.</summary>
    public static readonly Gen<History> Any = Gen.Select(
            Gen.OneOf(
                ("Europe/Madrid", new LocalDate(2027, 6, 4)),
                ("Europe/Madrid", new LocalDate(2027, 3, 27)),
                ("Europe/Madrid", new LocalDate(2027, 10, 30)),
                ("Australia/Lord_Howe", new LocalDate(2027, 4, 3)),
                ("Africa/Windhoek", new LocalDate(2027, 7, 1)),
                ("Pacific/Kiritimati", new LocalDate(2027, 1, 8))),
            Gen.OneOf((new LocalTime(16, 0), 0), (new LocalTime(18, 45), 0), (new LocalTime(22, 40), 0), (new LocalTime(1, 20), 1)),
            Gen.OneOf(new LocalTime(22, 0), new LocalTime(20, 30), new LocalTime(6, 30)),
            AnyLook.Array[Passes.Length])
        .Select((place, leave, quiet, looks) => new History(
            place.Item1, place.Item2, leave.Item1, leave.Item2, quiet,
            [.. looks.Zip(Passes, (look, pass) => look with { Pass = pass.Pass, DayOffset = pass.Day, At = pass.At })]));

    /// <summary>The same with up to five acts of the subscriber in between.</summary>
    public static readonly Gen<History> Steered = Gen.Select(
            Any,
            Gen.Select(Gen.Enum<Act>(), Gen.Int[-4, 0], Gen.Int[0, 23], Gen.Int[1, 4], AnyLook)
                .Select((act, day, hour, rest, look) => new Acting(act, day, new LocalTime(hour, 47), rest, look)).Array[1, 5])
        .Select((history, acts) => history with { Acts = [.. acts.OrderBy(a => (a.DayOffset, a.At))] });

    public DateTimeZone Tz => DateTimeZoneProviders.Tzdb[Zone];

    public Watch Watch => Ines.CoreWatch with
    {
        Site = Ines.CoreWatch.Site with { Zone = Tz },
        Outing = Ines.CoreWatch.Outing with { FreeEvenings = [] },
        Letters = new LetterSettings { MarginalLeadNights = 3, QuietFrom = QuietFrom, QuietUntil = new LocalTime(6, 30) },
    };

    public Instant LeaveBy => Ines.Local(Night.PlusDays(LeaveDayOffset), LeaveAt.Hour, LeaveAt.Minute, Tz);

    /// <summary>Runs the policy over the history the way the service does.</summary>
    public IReadOnlyList<Step> Run()
    {
        var memory = new ToldNight { WatchId = Watch.Id, Night = Night };
        LocalDate? rests = null;
        var steps = new List<Step>();
        var run = 0;
        var events = Looks
            .Select(look => (Look: look, Act: (Acting?)null, Now: TimeOf(look)))
            .Concat(
                Acts.Select(act =>
                    (Look: act.Sees, Act: (Acting?)act, Now: Ines.Local(Night.PlusDays(act.DayOffset), act.At.Hour, act.At.Minute, Tz))))
            .OrderBy(p => p.Now);
        foreach (var (look, act, now) in events)
        {
            if (act is not null)
            {
                var seen = PlanOf(look, run, rests);
                if (act.Act == Act.Rest) rests = now.InZone(Tz).Date.PlusDays(act.RestDays);
                if (Wished(act.Act, memory, seen, now, rests) is not { } wished) continue;
                steps.Add(new Step(look.Pass, now, seen, run, memory, wished) { Act = act.Act, Rests = rests });
                memory = wished.Next;
                continue;
            }

            if (look.NewRun) run++;
            if (look.Mishap == Mishap.Missed) continue;
            var plan = PlanOf(look, run, rests);
            if (look.Mishap == Mishap.KilledBeforeSave) _ = LetterPolicy.Decide(look.Pass, memory, plan, now);
            for (var times = look.Mishap == Mishap.RunTwice ? 2 : 1; times > 0; times--)
            {
                var decision = LetterPolicy.Decide(look.Pass, memory, plan, now);
                steps.Add(new Step(look.Pass, now, plan, run, memory, decision) { Rests = rests });
                memory = decision.Next;
            }
        }

        return steps;
    }

    // What the service makes of an act; null: it refuses it, or it does not concern the night.
    private PolicyDecision? Wished(Act act, ToldNight memory, NightPlan plan, Instant now, LocalDate? rests)
    {
        var other = plan with { Night = Night.PlusDays(1) };
        switch (act)
        {
            case Act.Snooze:
                return new PolicyDecision(SubscriberWishes.Snooze(memory), null, "snoozed");
            case Act.Unsnooze:
                return new PolicyDecision(SubscriberWishes.Unsnooze(memory), null, "unsnoozed");
            case Act.Leave:
                return SubscriberWishes.StandDown(memory, plan, now, new Wish.SwitchedTo(other));
            case Act.Choose
                when now.InZone(Tz).Date < rests
                    || Night < rests
                    || plan.Verdict.Class == VerdictClass.NoGo
                    || plan.LeaveBy is null
                    || plan.LeaveBy <= now:
                return null;
            case Act.Choose:
                return SubscriberWishes.Choose(memory, plan, now, new Wish.SwitchedFrom(other));
            default:
                return Night < rests && (memory.IsOn || memory.OnCalendar)
                    ? SubscriberWishes.StandDown(memory, plan, now, new Wish.Paused(rests.Value))
                    : null;
        }
    }

    /// <inheritdoc/>
    public override string ToString() =>
        $"{Zone} {Night:R} leave {LeaveAt}+{LeaveDayOffset} quiet {QuietFrom}\n" + string.Join('\n', Run().Select(s => s.ToString()));

    private Instant TimeOf(Look look) => (look.Pass == PassKind.LeaveBy
        ? LeaveBy
        : Ines.Local(Night.PlusDays(look.DayOffset), look.At.Hour, look.At.Minute, Tz)) + Duration.FromMinutes(look.DelayMin);

    private NightPlan PlanOf(Look look, int run, LocalDate? rests)
    {
        var plan = BareNights.Of(look.Class, look.Chance, run, Night, Watch with { PausedUntil = rests }, hasForecast: look.HasForecast);
        return plan with { LeaveBy = look.Class == VerdictClass.NoGo && run % 2 == 0 ? null : LeaveBy };
    }
}

/// <summary>One decision of a history.</summary>
internal sealed record Step(PassKind Pass, Instant Now, NightPlan Plan, int Run, ToldNight Before, PolicyDecision Decision)
{
    /// <summary>The subscriber's own act; null: a pass.</summary>
    public Act? Act { get; init; }

    /// <summary>Until when the watch rests.</summary>
    public LocalDate? Rests { get; init; }

    /// <inheritdoc/>
    public override string ToString() =>
        $"{Now.InZone(Plan.Watch.Site.Zone).LocalDateTime:g} {(Act is { } act ? act.ToString() : Pass.ToString())} run {Run} " +
        $"{Plan.Verdict.Class} {Plan.Verdict.Probability.Value:F2} {(Plan.Forecast is null ? "blind" : "")} -> " +
        $"{Letter?.Kind.ToString() ?? "-"}: {Decision.Why}";

    public LetterOrder? Letter => Decision.Letter;

    public bool SaysOff => Plan.Verdict.Class == VerdictClass.NoGo;

    public LocalDate LocalDate => Now.InZone(Plan.Watch.Site.Zone).Date;
}

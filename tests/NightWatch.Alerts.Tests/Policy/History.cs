using CsCheck;
using NightWatch.Alerts.Policy;
using NightWatch.Alerts.Tests.Plans;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Watches;
using NodaTime;

namespace NightWatch.Alerts.Tests.Policy;

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
internal sealed record Look(PassKind Pass, int DayOffset, LocalTime At, int DelayMin, Mishap Mishap, VerdictClass Class, double Chance, bool NewRun, bool HasForecast);

/// <summary>A random life of one night, from four evenings before to the morning after.</summary>
internal sealed record History(string Zone, LocalDate Night, LocalTime LeaveAt, int LeaveDayOffset, LocalTime QuietFrom, IReadOnlyList<Look> Looks)
{
    private static readonly Gen<VerdictClass> Class = Gen.Enum<VerdictClass>();

    private static readonly Gen<Mishap> AnyMishap =
        Gen.Frequency((70, Gen.Const(Mishap.None)), (14, Gen.Const(Mishap.Missed)), (8, Gen.Const(Mishap.KilledBeforeSave)), (8, Gen.Const(Mishap.RunTwice)));

    private static readonly Gen<int> Delay = Gen.Frequency((80, Gen.Const(0)), (15, Gen.Int[1, 90]), (5, Gen.Int[91, 900]));

    private static readonly (PassKind Pass, int Day, LocalTime At)[] Passes =
    [
        .. Enumerable.Range(-4, 5).Select(day => (PassKind.Evening, day, new LocalTime(19, 0))),
        (PassKind.Morning, 0, new LocalTime(7, 0)), (PassKind.SameDay, 0, new LocalTime(11, 0)), (PassKind.SameDay, 0, new LocalTime(14, 0)),
        (PassKind.SameDay, 0, new LocalTime(16, 30)), (PassKind.LeaveBy, 0, LocalTime.Midnight), (PassKind.After, 1, new LocalTime(7, 0)),
    ];

    private static readonly Gen<Look> AnyLook =
        Gen.Select(AnyMishap, Delay, Class, Gen.Double[0.05, 0.95], Gen.Frequency((75, Gen.Const(true)), (25, Gen.Const(false))), Gen.Frequency((92, Gen.Const(true)), (8, Gen.Const(false))))
            .Select((mishap, delay, verdict, chance, newRun, has) =>
                new Look(PassKind.SameDay, 0, default, delay, mishap, has ? verdict : VerdictClass.Marginal, chance, newRun, has));

    /// <summary>Zones and nights include clock changes: Madrid and Lord Howe (half an hour) in spring and autumn.</summary>
    public static readonly Gen<History> Any = Gen.Select(
            Gen.OneOf(
                ("Europe/Madrid", new LocalDate(2027, 6, 4)), ("Europe/Madrid", new LocalDate(2027, 3, 27)), ("Europe/Madrid", new LocalDate(2027, 10, 30)),
                ("Australia/Lord_Howe", new LocalDate(2027, 4, 3)), ("Africa/Windhoek", new LocalDate(2027, 7, 1)), ("Pacific/Kiritimati", new LocalDate(2027, 1, 8))),
            Gen.OneOf((new LocalTime(16, 0), 0), (new LocalTime(18, 45), 0), (new LocalTime(22, 40), 0), (new LocalTime(1, 20), 1)),
            Gen.OneOf(new LocalTime(22, 0), new LocalTime(20, 30), new LocalTime(6, 30)),
            AnyLook.Array[Passes.Length])
        .Select((place, leave, quiet, looks) => new History(
            place.Item1, place.Item2, leave.Item1, leave.Item2, quiet,
            [.. looks.Zip(Passes, (look, pass) => look with { Pass = pass.Pass, DayOffset = pass.Day, At = pass.At })]));

    public DateTimeZone Tz => DateTimeZoneProviders.Tzdb[Zone];

    public Watch Watch => TestPlans.CoreWatch with
    {
        Site = TestPlans.CoreWatch.Site with { Zone = Tz },
        Outing = TestPlans.CoreWatch.Outing with { FreeEvenings = [] },
        Letters = new LetterSettings { QuietFrom = QuietFrom, QuietUntil = new LocalTime(6, 30) },
    };

    public Instant LeaveBy => TestSky.Local(Night.PlusDays(LeaveDayOffset), LeaveAt.Hour, LeaveAt.Minute, Tz);

    /// <summary>Runs the policy over the history the way the service does.</summary>
    public IReadOnlyList<Step> Run()
    {
        var memory = new ToldNight { WatchId = Watch.Id, Night = Night };
        var steps = new List<Step>();
        var run = 0;
        var passes = Looks.Select(look => (Look: look, Now: TimeOf(look))).OrderBy(p => p.Now);
        foreach (var (look, now) in passes)
        {
            if (look.NewRun) run++;
            if (look.Mishap == Mishap.Missed) continue;
            var plan = PlanOf(look, run);
            if (look.Mishap == Mishap.KilledBeforeSave) _ = LetterPolicy.Decide(look.Pass, memory, plan, now);
            for (var times = look.Mishap == Mishap.RunTwice ? 2 : 1; times > 0; times--)
            {
                var decision = LetterPolicy.Decide(look.Pass, memory, plan, now);
                steps.Add(new Step(look.Pass, now, plan, run, memory, decision));
                memory = decision.Next;
            }
        }

        return steps;
    }

    /// <inheritdoc/>
    public override string ToString() =>
        $"{Zone} {Night:R} leave {LeaveAt}+{LeaveDayOffset} quiet {QuietFrom}\n" + string.Join('\n', Run().Select(s => s.ToString()));

    private Instant TimeOf(Look look) => (look.Pass == PassKind.LeaveBy
        ? LeaveBy
        : TestSky.Local(Night.PlusDays(look.DayOffset), look.At.Hour, look.At.Minute, Tz)) + Duration.FromMinutes(look.DelayMin);

    private NightPlan PlanOf(Look look, int run)
    {
        var plan = TestPlans.Of(look.Class, look.Chance, run, Night, Watch, hasForecast: look.HasForecast, bare: true);
        return plan with { LeaveBy = look.Class == VerdictClass.NoGo && run % 2 == 0 ? null : LeaveBy };
    }
}

/// <summary>One decision of a history.</summary>
internal sealed record Step(PassKind Pass, Instant Now, NightPlan Plan, int Run, ToldNight Before, PolicyDecision Decision)
{
    /// <inheritdoc/>
    public override string ToString() =>
        $"{Now.InZone(Plan.Watch.Site.Zone).LocalDateTime:g} {Pass} run {Run} {Plan.Verdict.Class} {Plan.Verdict.Probability.Value:F2} {(Plan.Forecast is null ? "blind" : "")} -> {Letter?.Kind.ToString() ?? "-"}: {Decision.Why}";

    public LetterOrder? Letter => Decision.Letter;

    public bool SaysOff => Plan.Verdict.Class == VerdictClass.NoGo;

    public LocalDate LocalDate => Now.InZone(Plan.Watch.Site.Zone).Date;
}

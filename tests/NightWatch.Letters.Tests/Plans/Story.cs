using NightWatch.Letters.Drafts;
using NightWatch.Letters.Policy;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Watches;
using NodaTime;

namespace NightWatch.Letters.Tests.Plans;

/// <summary>
/// One night told from the third evening before to the morning after: at each of the watch's passes it is planned over invented weather,
/// and the policy says which letter goes out.
/// </summary>
internal sealed class Story
{
    private const int MostAlternatives = 3;

    private readonly InventedWeather weather;
    private readonly Watch watch;
    private readonly List<(Instant At, PolicyDecision Decision)> passes = [];

    /// <param name="seed">Of the weather.</param>
    /// <param name="watch">Whose night.</param>
    public Story(long seed, Watch watch)
    {
        weather = new InventedWeather(seed);
        this.watch = watch;
        foreach (var day in new[] { -3, -2, -1 }) Pass(PassKind.Evening, Ines.At(19, 0, day));
        Pass(PassKind.Morning, Ines.At(7));
        foreach (var check in watch.Letters.SameDayChecks) Pass(PassKind.SameDay, Ines.At(check.Hour, check.Minute));
        if (Memory.LeaveBy is { } leaveBy) Pass(PassKind.LeaveBy, leaveBy);
        Pass(PassKind.After, Ines.At(7, 0, 1));
    }

    private ToldNight Memory => passes.Count == 0 ? new ToldNight { WatchId = watch.Id, Night = Ines.Night } : passes[^1].Decision.Next;

    /// <summary>What the subscriber knows at a time.</summary>
    public ToldNight ToldAt(Instant now) => passes.Last(pass => pass.At <= now).Decision.Next;

    /// <summary>The night as it is planned at a time.</summary>
    public NightPlan PlanAt(Instant now) =>
        weather.Plan(watch, Ines.Night, now, passes.LastOrDefault(pass => pass.At < now).Decision?.Next.Told);

    /// <summary>The first letter of a kind.</summary>
    public LetterDraft Letter(LetterKind kind) => Letters(kind).First();

    /// <summary>All letters of a kind; a night that is off comes with what to do instead.</summary>
    public IEnumerable<LetterDraft> Letters(LetterKind kind) =>
        passes
            .Select(pass => pass.Decision.Letter)
            .OfType<LetterOrder>()
            .Where(order => order.Kind == kind)
            .Select(order =>
                TestDrafts.Of(order) with
                {
                    Alternatives =
                        order.Plan.Verdict.Class == VerdictClass.Go
                        || kind is LetterKind.Outlook or LetterKind.MorningTimeline or LetterKind.Debrief
                            ? new Dictionary<string, IReadOnlyList<Alternative>>()
                            : new Dictionary<string, IReadOnlyList<Alternative>> { [watch.Id] = Instead(order.Plan) },
                });

    private void Pass(PassKind pass, Instant at) => passes.Add((at, LetterPolicy.Decide(pass, Memory, PlanAt(at), at)));

    private IReadOnlyList<Alternative> Instead(NightPlan plan)
    {
        var others = Enumerable.Range(1, 5).Select(ahead => weather.Plan(watch, plan.Night.PlusDays(ahead), plan.MadeAt))
            .Append(weather.Plan(Ines.SaltShelf, plan.Night, plan.MadeAt));
        return
        [
            .. Alternatives
                .Rank(watch, [.. others], plan.MadeAt)
                .Take(MostAlternatives)
                .Select(best => new Alternative(best.Plan, best.DriveKm)),
        ];
    }
}

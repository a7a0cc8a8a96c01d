using NightWatch.Letters.Drafts;
using NightWatch.Letters.Links;
using NightWatch.Letters.Policy;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Verification.Calls;
using NightWatch.Words;
using NodaTime;

namespace NightWatch.Letters.Views;

/// <summary>One night of a letter, or of its page (no kind: it can be read at any time), with the words to say it in.</summary>
internal sealed class NightContext(
    LetterKind? kind, NightPlan plan, ToldNight before, IReadOnlyList<Alternative> alternatives, Instant now, LetterLinks links)
{
    public NightContext(LetterOrder order, IReadOnlyList<Alternative> alternatives, Instant now, LetterLinks links)
        : this(order.Kind, order.Plan, order.Before, alternatives, now, links)
    {
        Wish = order.Wish;
        StandsDownByWish = order.StandsDownByWish;
    }

    /// <summary>What came of this watch's earlier calls.</summary>
    public TrackRecord Track { get; init; } = TrackRecord.None;

    /// <summary>Of them those like this one; null: too few to tell.</summary>
    public LikeCalls? Like =>
        StandsDownByWish ? null : Track.Of(Class, Kind == LetterKind.Debrief ? -1 : LeadNights.Of(Now, Plan.Watch.Site.Zone, Plan.Night));

    /// <summary>The subscriber's own wish behind the letter; null: none.</summary>
    public Wish? Wish { get; }

    /// <summary>The subscriber does not go, whatever the sky does.</summary>
    public bool StandsDownByWish { get; }

    public LetterKind? Kind { get; } = kind;

    public NightPlan Plan { get; } = plan;

    public ToldNight Before { get; } = before;

    public IReadOnlyList<Alternative> Alternatives { get; } = alternatives;

    public Instant Now { get; } = now;

    public LetterLinks Links { get; } = links;

    /// <summary>In the subscriber's language and units, by the site's clock.</summary>
    public Speech Speech { get; } = Speech.To(plan.Watch);

    public ILanguage Language => Speech.Language;

    public ClockWords Clock => Speech.Clock;

    public UnitWords Units => Speech.Units;

    /// <summary>The class the letter is about: after the night, the one that was told; off, where the subscriber does not go.</summary>
    public VerdictClass Class =>
        StandsDownByWish ? VerdictClass.NoGo
        : Kind == LetterKind.Debrief ? Before.Told ?? Plan.Verdict.Class
        : Plan.Verdict.Class;

    public bool IsOff => Class == VerdictClass.NoGo;

    /// <summary>The Sun is up after it.</summary>
    public bool IsOver => Now >= (Plan.Sky.Sun.Rise ?? Plan.Sky.Span.End);

    /// <summary>Past its midnight, before its sunrise.</summary>
    public bool IsRunning => !IsOver && Now.InZone(Plan.Watch.Site.Zone).Date > Plan.Night;

    /// <summary>An outlook always looks ahead; a page does until the day.</summary>
    public bool IsDaysAhead => Kind == LetterKind.Outlook || (Kind is null && Now.InZone(Plan.Watch.Site.Zone).Date < Plan.Night);

    /// <summary>Name of the site, fit for one line.</summary>
    public string Site => PlainWords.OneLine(Plan.Watch.Site.Name);

    /// <summary>As its reader counts it.</summary>
    public SpokenNight Spoken => new(Plan.Night, NightsAhead);

    /// <summary>So near that nobody would count nights.</summary>
    public bool IsNear => Spoken.IsNear;

    private int NightsAhead => Period.DaysBetween(Now.InZone(Plan.Watch.Site.Zone).Date, Plan.Night);
}

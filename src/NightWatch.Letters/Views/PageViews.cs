using NightWatch.Letters.Drafts;
using NightWatch.Letters.Links;
using NightWatch.Letters.Policy;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Verification.Calls;
using NightWatch.Words;
using NodaTime;

namespace NightWatch.Letters.Views;

/// <summary>A night as its page says it: the letters' own view, read at any time, before the night or after it.</summary>
public static class PageViews
{
    /// <summary>What stays true of every night out.</summary>
    public static IReadOnlyList<string> CautionsFor(NightPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return Speech.To(plan.Watch).Language.StandingCautions(onPage: true);
    }

    /// <summary>Makes the view.</summary>
    /// <param name="plan">The night.</param>
    /// <param name="told">What the subscriber was told of it.</param>
    /// <param name="alternatives">What to do instead, the best first.</param>
    /// <param name="now">When it is read.</param>
    /// <param name="links">Where its links lead.</param>
    /// <param name="track">What came of the watch's earlier calls; null: nothing is known.</param>
    public static NightView Of(
        NightPlan plan, ToldNight told, IReadOnlyList<Alternative> alternatives, Instant now, LetterLinks links, TrackRecord? track = null)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var night = new NightContext(kind: null, plan, told, alternatives, now, links) { Track = track ?? TrackRecord.None };
        return NightViews.Of(night, isShort: false) with { Page = null };
    }
}

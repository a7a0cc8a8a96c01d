using NightWatch.Planning.Nights;
using NodaTime;

namespace NightWatch.Letters.Policy;

/// <summary>A letter to be written about one watch and one night.</summary>
/// <param name="Kind">Which letter it is.</param>
/// <param name="Plan">What is true now.</param>
/// <param name="Before">What had been told, so that the letter can say what changed.</param>
/// <param name="NotAfter">Later than this it is worse than silence.</param>
/// <param name="Why">Why it is written, for the log.</param>
public sealed record LetterOrder(LetterKind Kind, NightPlan Plan, ToldNight Before, Instant NotAfter, string Why)
{
    /// <summary>What it does to the calendar entry; its SEQUENCE is <c>Before.CalendarSequence + 1</c>.</summary>
    public CalendarChange Calendar { get; init; }

    /// <summary>The subscriber's own wish behind it; null: the weather's doing.</summary>
    public Wish? Wish { get; init; }

    /// <summary>The subscriber does not go, whatever the sky does.</summary>
    public bool StandsDownByWish => Wish is Wish.SwitchedTo or Wish.Paused;
}

/// <summary>What the policy decided.</summary>
/// <param name="Next">The memory after it.</param>
/// <param name="Letter">The letter; null: silence.</param>
/// <param name="Why">Why it writes or keeps silent; stored with the verdict.</param>
public sealed record PolicyDecision(ToldNight Next, LetterOrder? Letter, string Why);

/// <summary>What to tell and when: a pure state machine.</summary>
/// <remarks>
/// <para>
/// The memory is <see cref="ToldNight"/>; the phase follows from the clock, so that a pass that runs late (a restart, a missed tick) does
/// what is right for the hour and not what its name says. A letter is written only where the class now differs from the class told
/// (or, once each, for the timeline and the debrief), and writing it sets the class told: one net change is one letter.
/// </para>
/// <code>
/// phase        told     now                      letter
/// days ahead   nothing  go                       outlook
///              nothing  marginal with P, last ev. outlook
/// (evening)    marginal go, in two runs          outlook
///              off      go, in two runs          outlook
///              on       no-go, in two runs       stand-down, CANCEL
/// on the day   nothing  go                       morning timeline, REQUEST
///              on       on, outlook was last     morning timeline, REQUEST (once)
///              go       marginal, past margin    reschedule warning, REQUEST
///              on       no-go                    reschedule warning, CANCEL
///              off      go, past margin          reschedule warning, REQUEST
/// at leave-by  on       no-go                    stand-down, CANCEL; closed
///              off      anything                 silence; closed
/// after        on       anything                 debrief (once)
/// </code>
/// <para>
/// To who was told nothing, or that the night is off, a night that is a go once the reader has done what must be done first is news like a
/// go.
/// </para>
/// <para>
/// A reschedule warning and a stand-down never follow each other about the same change. On the day the warning is the word that the night
/// is off: it comes with the alternatives, while there is time to use them, and takes the entry out of the calendar at once, since
/// an alarm for a drive that is off is worse than none. Should the night come back, a REQUEST with a higher SEQUENCE puts it back.
/// At leave-by such a night is closed without another letter: "still off" would be a second letter of one net change. The stand-down
/// is the word where there is no same-day choice to make: days ahead, and at leave-by itself for a night that was still on.
/// </para>
/// <para>
/// On the day a change counts when two different forecast runs show it, when leave-by is near
/// (one run is enough), or when the sky alone decides; a missing forecast is never news. Good news stops
/// after a few letters about one night, bad news never does.
/// </para>
/// <para>
/// A snoozed night is decided like any other, but of its letters only the one that takes it out of the calendar is written, as a plain
/// stand-down. What the subscriber does themselves (switch, pause) stands in <see cref="SubscriberWishes"/>.
/// </para>
/// </remarks>
public static class LetterPolicy
{
    /// <summary>An order for a letter of a kind as if it were due now, to be looked at and never to be queued: it is no decision.</summary>
    /// <param name="kind">Which letter.</param>
    /// <param name="before">What the subscriber knows.</param>
    /// <param name="plan">What is true now.</param>
    /// <param name="now">The clock reading.</param>
    public static LetterOrder ForReview(LetterKind kind, ToldNight before, NightPlan plan, Instant now)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(plan);
        // Which pass is looking makes no difference to what a letter says.
        var change = Telling.ChangeOf(new NightLook(PassKind.Evening, before, plan, now), kind);
        return new LetterOrder(kind, plan, before, plan.Sky.Span.End, "for review") { Calendar = change };
    }

    /// <summary>Decides for one watch and one night in one pass.</summary>
    /// <param name="pass">Which pass is looking.</param>
    /// <param name="before">What the subscriber knows.</param>
    /// <param name="plan">What is true now.</param>
    /// <param name="now">The clock reading of the pass.</param>
    /// <exception cref="ArgumentException">The memory is about another watch or night than the plan.</exception>
    public static PolicyDecision Decide(PassKind pass, ToldNight before, NightPlan plan, Instant now)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(plan);
        if (before.WatchId != plan.Watch.Id || before.Night != plan.Night)
            throw new ArgumentException(
                $"The memory is about {before.WatchId} {before.Night:R}, the plan about {plan.Watch.Id} {plan.Night:R}.", nameof(before));

        var look = new NightLook(pass, before, plan, now);
        if (plan.Watch.IsPausedAt(now)) return Telling.NoNews(look, "paused");
        return before.Snoozed ? WhileSnoozed(look) : Decide(look);
    }

    private static PolicyDecision Decide(NightLook look)
    {
        if (look.Before.Closed) return Telling.NoNews(look, "closed");
        if (look.Lead > 0) return DaysAhead.Decide(look);
        if (look.Pass == PassKind.After && look.Lead < 0) return MorningAfter.Decide(look);
        return look.Now >= look.LeaveBy ? AtLeaveBy.Decide(look) : OnTheDay.Decide(look);
    }

    private static PolicyDecision WhileSnoozed(NightLook look)
    {
        var decision = Decide(look);
        if (decision.Letter is not { } letter) return decision;
        return letter.Calendar == CalendarChange.Cancel
            ? Telling.Compose(
                look,
                LetterKind.StandDown,
                letter.NotAfter,
                CalendarChange.Cancel,
                $"snoozed, but in the calendar: {letter.Why}",
                decision.Next.Closed)
            : Telling.NoNews(look, "snoozed");
    }
}

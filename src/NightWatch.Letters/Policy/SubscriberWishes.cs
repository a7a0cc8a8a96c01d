using NightWatch.Planning.Nights;
using NightWatch.Planning.Verdicts;
using NodaTime;

namespace NightWatch.Letters.Policy;

/// <summary>
/// What the subscriber's own steering makes of the memory, and which letter it needs: one only where the calendar must change or a
/// new night must be told. The subscriber is awake and waits for it, so quiet hours do not count.
/// </summary>
public static class SubscriberWishes
{
    /// <summary>No letters about the night from now on, but for the one that takes it out of the calendar should it turn off.</summary>
    public static ToldNight Snooze(ToldNight before)
    {
        ArgumentNullException.ThrowIfNull(before);
        return before with { Snoozed = true };
    }

    /// <summary>Letters again.</summary>
    public static ToldNight Unsnooze(ToldNight before)
    {
        ArgumentNullException.ThrowIfNull(before);
        return before with { Snoozed = false };
    }

    /// <summary>The subscriber will not go: a stand-down takes the entry out of the calendar; where there is none, silence.</summary>
    /// <param name="before">What the subscriber knows.</param>
    /// <param name="plan">The night as planned now.</param>
    /// <param name="now">The clock reading.</param>
    /// <param name="wish">Switched to another night: closed for good. Paused: open, so that a watch taken up early may tell it
    /// again.</param>
    public static PolicyDecision StandDown(ToldNight before, NightPlan plan, Instant now, Wish wish)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(plan);
        var look = new NightLook(PassKind.SameDay, before, plan, now);
        var closes = wish is Wish.SwitchedTo;
        const string why = "stood down by the subscriber";
        var decision = before.OnCalendar && now < look.SetUpEnds
            ? Telling.Compose(look, LetterKind.StandDown, look.SetUpEnds, CalendarChange.Cancel, why)
            : Telling.Silence(look, why);
        return decision with
        {
            // Not the sky's verdict: no probability stands in the way of telling the night again.
            Next = decision.Next with
            {
                Told = before.Told is null ? null : VerdictClass.NoGo,
                ToldProbability = null,
                Figures = before.Figures,
                Closed = closes || before.Closed,
                Chosen = false,
            },
            Letter = decision.Letter is { } letter ? letter with { Wish = wish } : null,
        };
    }

    /// <summary>
    /// The subscriber will go: an outlook, or today the timeline, puts the night into the calendar, also a marginal one. A night that
    /// stands there already needs no letter. From now on the night counts as free and is written about like any other.
    /// </summary>
    /// <param name="before">What the subscriber knows.</param>
    /// <param name="plan">The night as planned now.</param>
    /// <param name="now">The clock reading.</param>
    /// <param name="wish">What the subscriber wished.</param>
    /// <exception cref="ArgumentException">The night is off, or its leave-by has passed.</exception>
    public static PolicyDecision Choose(ToldNight before, NightPlan plan, Instant now, Wish wish)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(plan);
        if (plan.Verdict.Class == VerdictClass.NoGo || plan.LeaveBy is not { } leaveBy || leaveBy <= now)
            throw new ArgumentException("A night can be chosen while it is on and its leave-by has not passed.", nameof(plan));
        var chosen = before with { Chosen = true, Snoozed = false, Closed = false };
        var look = new NightLook(PassKind.SameDay, chosen, plan, now);
        const string why = "chosen by the subscriber";
        if (chosen is { IsOn: true, OnCalendar: true }) return Telling.Silence(look, why);
        var kind = look.Lead > 0 ? LetterKind.Outlook
            : before.Sent.Contains(LetterKind.MorningTimeline) ? LetterKind.RescheduleWarning
            : LetterKind.MorningTimeline;
        var decision = Telling.Compose(look, kind, leaveBy, CalendarChange.Request, why);
        return decision with { Letter = decision.Letter! with { Wish = wish } };
    }
}

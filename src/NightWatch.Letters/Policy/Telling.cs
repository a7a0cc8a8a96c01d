using NightWatch.Planning.Verdicts;
using NodaTime;

namespace NightWatch.Letters.Policy;

/// <summary>The three ways a look can end: a letter, a change that waits for a second run, silence.</summary>
internal static class Telling
{
    /// <summary>Writes, unless it is too late or the subscriber sleeps; then the change waits.</summary>
    /// <param name="look">The look.</param>
    /// <param name="kind">Which letter.</param>
    /// <param name="notAfter">When it stops being of use.</param>
    /// <param name="why">Why it is written.</param>
    /// <param name="closes">Nothing is said about the night afterwards.</param>
    public static PolicyDecision Write(NightLook look, LetterKind kind, Instant notAfter, string why, bool closes = false)
    {
        if (notAfter <= look.Now) return Silence(look, $"too late for it: {why}");
        if (QuietHours.Of(look.Plan.Watch).EndAfter(look.Now) is { } quietEnds && !Wakes(kind, quietEnds, look))
            return look.IsKnown ? Wait(look, $"quiet hours: {why}") : NoNews(look, $"quiet hours: {why}");

        return Compose(look, kind, notAfter, ChangeOf(look, kind), why, closes);
    }

    /// <summary>Writes, whatever the hour.</summary>
    /// <param name="look">The look.</param>
    /// <param name="kind">Which letter.</param>
    /// <param name="notAfter">When it stops being of use.</param>
    /// <param name="change">What it does to the calendar.</param>
    /// <param name="why">Why it is written.</param>
    /// <param name="closes">Nothing is said about the night afterwards.</param>
    public static PolicyDecision Compose(
        NightLook look, LetterKind kind, Instant notAfter, CalendarChange change, string why, bool closes = false)
    {
        var before = look.Before;
        var next = before with
        {
            Sent = [.. before.Sent, kind],
            Revision = before.Revision + 1,
            Closed = closes,
            // A timeline written without a forecast settles nothing: a no-go seen yesterday still needs only one more forecast run.
            Pending = look.IsKnown ? null : before.Pending,
            PendingRun = look.IsKnown ? null : before.PendingRun,
        };
        if (kind != LetterKind.Debrief)
        {
            next = Remember(next, look, kind) with
            {
                CalendarSequence = change == CalendarChange.None ? before.CalendarSequence : before.CalendarSequence + 1,
                OnCalendar = change == CalendarChange.None ? before.OnCalendar : change == CalendarChange.Request,
            };
        }

        return new PolicyDecision(next, new LetterOrder(kind, look.Plan, before, notAfter, why) { Calendar = change }, why);
    }

    /// <summary>Silence; the change seen waits for a second run.</summary>
    public static PolicyDecision Wait(NightLook look, string why)
    {
        var seenBefore = look.Before.Pending == look.Class && look.Before.PendingRun is not null;
        var next = seenBefore ? look.Before : look.Before with { Pending = look.Class, PendingRun = look.Run };
        return new PolicyDecision(next, null, why);
    }

    /// <summary>Silence; what waited, if anything, has gone.</summary>
    public static PolicyDecision Silence(NightLook look, string why) =>
        new(look.Before with { Pending = null, PendingRun = null }, null, why);

    /// <summary>Silence that forgets nothing: this pass had nothing to judge by.</summary>
    public static PolicyDecision NoNews(NightLook look, string why) => new(look.Before, null, why);

    // Only news that would come too late after a night's sleep may wake anyone.
    private static bool Wakes(LetterKind kind, Instant quietEnds, NightLook look) =>
        kind is LetterKind.RescheduleWarning or LetterKind.StandDown && quietEnds >= look.LeaveBy;

    /// <summary>A marginal outlook is a maybe and stays out of the calendar; whatever is already there moves along.</summary>
    public static CalendarChange ChangeOf(NightLook look, LetterKind kind) => look.Class switch
    {
        _ when kind == LetterKind.Debrief => CalendarChange.None,
        VerdictClass.NoGo => look.Before.OnCalendar ? CalendarChange.Cancel : CalendarChange.None,
        VerdictClass.Marginal when kind == LetterKind.Outlook && !look.Before.OnCalendar => CalendarChange.None,
        _ => look.Plan.LeaveBy is null ? CalendarChange.None : CalendarChange.Request,
    };

    private static ToldNight Remember(ToldNight next, NightLook look, LetterKind kind) =>
        next with
        {
            Told = look.Class,
            ToldBy = kind,
            ToldAt = look.Now,
            ToldProbability = look.Chance,
            LeaveBy = look.Plan.LeaveBy ?? look.Before.LeaveBy,
            ToldRun = look.Plan.Verdict.Run ?? look.Before.ToldRun,
            Figures =
            [
                .. look.Plan.Verdict.Reasons.Select(r => new ToldFigure(r.Factor, r.Severity, r.Value, r.Unit)
                {
                    Over = look.Plan.Verdict.Run,
                }),
            ],
        };
}

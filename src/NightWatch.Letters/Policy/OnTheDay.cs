using NightWatch.Planning.Verdicts;

namespace NightWatch.Letters.Policy;

/// <summary>The day of the night, until leave-by: the morning timeline and the reschedule warnings.</summary>
internal static class OnTheDay
{
    /// <summary>Decides in any pass of the day; a missed morning pass is made good by the next one.</summary>
    public static PolicyDecision Decide(NightLook look) => look.Before.Told switch
    {
        null => FirstWord(look),
        VerdictClass.NoGo => ToldOff(look),
        _ => ToldOn(look),
    };

    private static PolicyDecision FirstWord(NightLook look)
    {
        if (!look.IsKnown) return Telling.NoNews(look, "no forecast, nothing new");
        if (!look.IsGoOnceDone) return Telling.Silence(look, "not a go, never told");
        return look.IsFree
            ? Telling.Write(look, LetterKind.MorningTimeline, look.LeaveBy, "go today and never told: the timeline tells it")
            : Telling.Silence(look, "not a free evening");
    }

    private static PolicyDecision ToldOff(NightLook look)
    {
        if (!look.IsKnown) return Telling.NoNews(look, "no forecast, nothing new");
        if (!look.IsGoOnceDone) return Telling.Silence(look, "off, as told");
        if (!look.MayTellGoodNews) return Telling.Silence(look, "good news not told: not free, or letters enough");
        return Counts(look, c => c >= look.Class)
            ? Telling.Write(
                look,
                LetterKind.RescheduleWarning,
                look.LeaveBy,
                look.Class == VerdictClass.Go ? "told off, now go" : "told off, now go once its needs are met")
            : Telling.Wait(look, "go in one run; waits for a second");
    }

    private static PolicyDecision ToldOn(NightLook look)
    {
        if (look.Class == VerdictClass.NoGo)
        {
            if (!look.IsKnown) return Telling.NoNews(look, "no forecast, nothing new");
            return Counts(look, c => c < look.Before.Told)
                ? Telling.Write(look, LetterKind.RescheduleWarning, look.SetUpEnds, "told on, now off")
                : Telling.Wait(look, "off in one run; waits for a second");
        }

        if (TimelineIsDue(look))
            return Telling.Write(look, LetterKind.MorningTimeline, look.LeaveBy, "the day of a night that is on");
        if (look.Class >= look.Before.Told)
            return look.IsKnown ? Telling.Silence(look, "on, as told") : Telling.NoNews(look, "no forecast, nothing new");

        // Told go, now marginal. A feed that fell silent is no news about the sky.
        if (!look.IsKnown || look.Plan.Verdict.Deciding.IsUnknown) return Telling.NoNews(look, "marginal only for want of data");
        return Counts(look, c => c < look.Before.Told)
            ? Telling.Write(look, LetterKind.RescheduleWarning, look.LeaveBy, "told go, now marginal")
            : Telling.Wait(look, "marginal in one run; waits for a second");
    }

    // A warning written on the day carries all the clock times itself, so only an outlook leaves the timeline owing.
    private static bool TimelineIsDue(NightLook look) =>
        look.Before.ToldBy == LetterKind.Outlook && !look.Before.Sent.Contains(LetterKind.MorningTimeline);

    private static bool Counts(NightLook look, Func<VerdictClass, bool> agrees) =>
        look.IsCertain || look.InLastHours || look.HeldForTwoRuns(agrees);
}

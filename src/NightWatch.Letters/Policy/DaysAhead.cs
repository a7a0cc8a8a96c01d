using NightWatch.Planning.Verdicts;
using NightWatch.Sky.Time;

namespace NightWatch.Letters.Policy;

/// <summary>Before the day: outlooks, and the stand-down of a night that was told and has turned off.</summary>
internal static class DaysAhead
{
    /// <summary>Decides in an evening pass; other passes have no business here.</summary>
    public static PolicyDecision Decide(NightLook look)
    {
        if (look.Pass != PassKind.Evening) return Telling.NoNews(look, "its day has not come");
        if (!look.IsKnown) return Telling.NoNews(look, "no forecast, nothing new");
        return look.Before.Told switch
        {
            null => FirstOutlook(look),
            VerdictClass.NoGo => BackOrBetter(look, "is on again"),
            _ when look.Class == VerdictClass.NoGo => TurnedOff(look),
            VerdictClass.Marginal when look.Class == VerdictClass.Go => BackOrBetter(look, "has improved to go"),
            _ => Telling.Silence(look, "on, as told"),
        };
    }

    private static PolicyDecision FirstOutlook(NightLook look)
    {
        var settings = look.Plan.Watch.Letters;
        if (look.Lead > settings.LeadNights) return Telling.Silence(look, "further ahead than outlooks look");
        if (!look.IsFree) return Telling.Silence(look, "not a free evening");
        if (look.Class == VerdictClass.Go) return Outlook(look, "a free night ahead is go");
        if (look.Plan.Verdict.HoldsOnceDone) return Outlook(look, "a free night ahead is go once its needs are met");
        if (look.Lead > settings.MarginalLeadNights) return Telling.Silence(look, "marginal, and further ahead than a maybe is told");
        return look.Class == VerdictClass.Marginal && look.Chance >= settings.MarginalOutlookProbability
            ? Outlook(look, "a free night ahead is marginal with a fair chance")
            : Telling.Silence(look, "not good enough for an outlook");
    }

    private static PolicyDecision BackOrBetter(NightLook look, string what)
    {
        if (look.Class != VerdictClass.Go && !(look.Before.IsOff && look.IsGoOnceDone)) return Telling.Silence(look, "as told");
        if (look.Lead > look.Plan.Watch.Letters.LeadNights || !look.MayTellGoodNews)
            return Telling.Silence(look, "good news not told: not free, too far ahead, or letters enough");
        return look.IsCertain || look.HeldForTwoRuns(c => c >= look.Class)
            ? Outlook(look, $"a night told otherwise {what} in two runs")
            : Telling.Wait(look, $"{what} in one run; waits for a second");
    }

    private static PolicyDecision TurnedOff(NightLook look) =>
        look.IsCertain || look.HeldForTwoRuns(c => c == VerdictClass.NoGo)
            ? Telling.Write(look, LetterKind.StandDown, look.SetUpEnds, "told as on, off in two runs")
            : Telling.Wait(look, "off in one run; waits for a second");

    // On the morning itself the timeline has the word.
    private static PolicyDecision Outlook(NightLook look, string why) => Telling.Write(
        look, LetterKind.Outlook, LocalClock.At(look.Plan.Watch.Site.Zone, look.Plan.Night, look.Plan.Watch.Letters.MorningAt), why);
}

namespace NightWatch.Letters.Policy;

/// <summary>The night is over: what was it really like?</summary>
internal static class MorningAfter
{
    /// <summary>Asks once, about a night that was on to the end.</summary>
    public static PolicyDecision Decide(NightLook look)
    {
        if (!look.Before.IsOn) return Telling.Silence(look, "was not on");
        if (look.Before.Sent.Contains(LetterKind.Debrief)) return Telling.Silence(look, "already asked");
        return Telling.Write(
            look, LetterKind.Debrief, look.Plan.Sky.Span.End + TellingLimits.DebriefUse, "the morning after a night that was on");
    }
}

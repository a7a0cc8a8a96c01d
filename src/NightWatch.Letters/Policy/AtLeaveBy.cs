using NightWatch.Planning.Verdicts;

namespace NightWatch.Letters.Policy;

/// <summary>Leave-by has come: the last word, then the night is closed.</summary>
internal static class AtLeaveBy
{
    /// <summary>Stands the night down where the subscriber would leave for nothing; one run is enough.</summary>
    public static PolicyDecision Decide(NightLook look)
    {
        var before = look.Before;
        if (before.IsOff)
            return new PolicyDecision(
                before with
                {
                    Closed = true,
                    Pending = null,
                    PendingRun = null,
                },
                null,
                "off, as told; closed at leave-by");
        if (!before.IsOn) return Telling.Silence(look, "never told, and leave-by has passed");
        return look.Class == VerdictClass.NoGo && look.IsKnown
            ? Telling.Write(look, LetterKind.StandDown, look.SetUpEnds, "told on, off at leave-by", closes: true)
            : Telling.Silence(look, "on at leave-by");
    }
}

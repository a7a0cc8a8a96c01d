using NightWatch.Planning.Nights;
using NodaTime;

namespace NightWatch.Alerts.Policy;

/// <summary>A letter to be written about one watch and one night.</summary>
/// <param name="Kind">Which.</param>
/// <param name="Plan">What is true now.</param>
/// <param name="Before">What had been told, so that the letter can say what changed.</param>
/// <param name="NotAfter">Later than this it is worse than silence.</param>
/// <param name="Why">Why it is written, for the log.</param>
public sealed record LetterOrder(LetterKind Kind, NightPlan Plan, ToldNight Before, Instant NotAfter, string Why);

/// <summary>What the policy decided.</summary>
/// <param name="Next">The memory after it.</param>
/// <param name="Letter">The letter; null: silence.</param>
/// <param name="Why">Why it writes or keeps silent; stored with the verdict.</param>
public sealed record PolicyDecision(ToldNight Next, LetterOrder? Letter, string Why);

/// <summary>What to tell and when: a pure state machine.</summary>
public static class LetterPolicy
{
    /// <summary>Decides for one watch and one night in one pass.</summary>
    /// <param name="pass">Which pass is looking.</param>
    /// <param name="before">What the subscriber knows.</param>
    /// <param name="plan">What is true now.</param>
    /// <param name="now">The clock reading of the pass.</param>
    public static PolicyDecision Decide(PassKind pass, ToldNight before, NightPlan plan, Instant now) => throw new NotImplementedException();
}

using NightWatch.Letters.Drafts;
using NightWatch.Letters.Policy;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Verification.Calls;
using NightWatch.Planning.Verification.Outcomes;
using NightWatch.Words;
using NodaTime;

namespace NightWatch.Pages.Nights;

/// <summary>Everything a night's page is made from.</summary>
/// <param name="Plan">The night; of <see cref="NightBasis.VerdictAlone"/> only sky and verdict count.</param>
/// <param name="Told">What the subscriber was told.</param>
/// <param name="Alternatives">What to do instead, the best first.</param>
/// <param name="Basis">What it stands on.</param>
/// <param name="Now">When it was looked up.</param>
internal sealed record FoundNight(NightPlan Plan, ToldNight Told, IReadOnlyList<Alternative> Alternatives, NightBasis Basis, Instant Now)
{
    /// <summary>What came of the watch's earlier calls.</summary>
    public TrackRecord Track { get; init; } = TrackRecord.None;

    /// <summary>What the photographer said it was like; null: nothing yet.</summary>
    public NightOutcome? Said { get; init; }

    /// <summary>The Sun is up after it.</summary>
    public bool IsOver => Now >= (Plan.Sky.Sun.Rise ?? Plan.Sky.Span.End);
}

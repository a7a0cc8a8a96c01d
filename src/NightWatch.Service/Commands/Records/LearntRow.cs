using NightWatch.Planning.Chance;
using NightWatch.Words;
using NodaTime;

namespace NightWatch.Service.Commands.Records;

/// <summary>What was learnt of one feed at one lead, as JSON has it.</summary>
/// <param name="Feed">The feed.</param>
/// <param name="LeadNights">Nights ahead, 0 on the day.</param>
/// <param name="Version">Rises whenever other chances follow from it.</param>
/// <param name="LearntAt">When it was learnt.</param>
/// <param name="Nights">Nights learnt from.</param>
/// <param name="IsUsed">Chances follow from it.</param>
/// <param name="Proof">How it does against the prior alone.</param>
/// <param name="Places">What it makes of each place.</param>
/// <param name="Why">The same in words.</param>
internal sealed record LearntRow(
    string Feed,
    int LeadNights,
    int Version,
    Instant LearntAt,
    int Nights,
    bool IsUsed,
    LearningProof Proof,
    IReadOnlyList<LearntPlace> Places,
    string Why)
{
    public static LearntRow Of(LearntChance one) => new(
        one.For.FeedId, one.For.Lead, one.Version, one.LearntAt, one.Learning.Nights, one.IsUsed, one.Proof,
        [.. one.Learning.KnownPlaces.Order(StringComparer.Ordinal).Select(place => LearntPlace.Of(place, one.Learning.ModelFor(place)))],
        English.Instance.Of(one, place: null));
}

/// <summary>What was learnt of one place.</summary>
/// <param name="Site">The site's id.</param>
/// <param name="Weight">Weight of the forecast, 0 to 1; the climate has the rest.</param>
/// <param name="Climate">How often nights there were usable, 0 to 1.</param>
internal sealed record LearntPlace(string Site, double Weight, double Climate)
{
    public static LearntPlace Of(string site, ChanceModel model) => new(site, model.Weight, model.Climate);
}

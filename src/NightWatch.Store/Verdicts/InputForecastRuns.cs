using NightWatch.Weather.Known;
using NightWatch.Weather.Rain;
using NodaTime;

namespace NightWatch.Store.Verdicts;

/// <summary>The weather that a verdict was made from, by the ids of the kept answers, so that it can be made again.</summary>
/// <param name="Newest">Stored answer that decided; null: none.</param>
/// <param name="SecondOpinion">Of the next feed; null: none.</param>
/// <param name="Earlier">Earlier runs of the deciding feed, newest first.</param>
/// <param name="Members">Of the ensemble; null: none.</param>
/// <param name="RetrievedAt">When the deciding answer had last been confirmed by then; a later confirmation moves the stored row's
/// own.</param>
/// <param name="Rain">Rain of the three days before, as it was known.</param>
public sealed record InputForecastRuns(
    long? Newest, long? SecondOpinion, IReadOnlyList<long> Earlier, long? Members, Instant? RetrievedAt, RainBefore Rain)
{
    /// <summary>Of the weather as it is known.</summary>
    public static InputForecastRuns Of(PlaceWeather weather, RainBefore rain)
    {
        ArgumentNullException.ThrowIfNull(weather);
        return new(
            weather.Newest?.Id,
            weather.SecondOpinion?.Id,
            [.. weather.EarlierRuns.Select(run => run.Id).OfType<long>()],
            weather.Members.FirstOrDefault()?.Id,
            weather.Newest?.RetrievedAt,
            rain);
    }

    /// <summary>Every stored answer, the deciding one first.</summary>
    public IEnumerable<long> All() =>
        [.. new[] { Newest, SecondOpinion }.OfType<long>(), .. Earlier, .. Members is { } members ? [members] : Array.Empty<long>()];
}

using NightWatch.Planning.Nights;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Nights;
using NightWatch.Watchkeeping.Evaluations;
using NightWatch.Weather.Fake;
using NightWatch.Weather.Feeds;
using NodaTime;

namespace NightWatch.Service.Rehearsal;

/// <summary>What a night was really like: the same evaluation, fed with the weather that came instead of the one forecast.</summary>
internal sealed class Truth(FakeWeather weather, SharedSky sky)
{
    /// <summary>Evaluates a night that is over.</summary>
    public async Task<NightPlan> OfAsync(Watch watch, LocalDate night, CancellationToken stop)
    {
        // A run issued after the night holds the night's hours as they were; its own evening is when the photographer left.
        var noon = NightSpan.Noon(watch.Site.Zone, night);
        var after = new FakeFeed(weather, new VirtualClock(noon + Duration.FromHours(30)), members: 0);
        var fetched = (Fetched.Fresh)await after.FetchAsync(NightEvaluation.PlaceOf(watch), null, stop);
        return NightEvaluation.Came(watch, night, fetched.Series, noon + Duration.FromHours(30), sky);
    }
}

using System.Collections.Immutable;
using NightWatch.Planning.Chance;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Nights;
using NightWatch.Watchkeeping.Evaluations;
using NightWatch.Weather.Fake;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.Known;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Watchkeeping.SimulatedYears;

/// <summary>The planner over one site's invented weather, as it would have been forecast and as it came.</summary>
internal sealed class SimulatedWeather(FakeWeather weather, Watch watch, SharedSky sky)
{
    /// <summary>As many as the fake feed has.</summary>
    private const int Members = 20;

    private static readonly Duration RainMemory = Duration.FromHours(72);
    private static readonly Duration Slack = Duration.FromHours(1);

    private readonly ForecastPlace place = NightEvaluation.PlaceOf(watch);
    private readonly Dictionary<(Instant IssuedAt, LocalDate Night), (ForecastSeries Run, ImmutableArray<ForecastSeries> Members)> runs = [];

    /// <summary>The night without any weather: whether the sky allows it.</summary>
    public NightPlan SkyOf(LocalDate night) => Plan(night, NoonOf(night), null, []);

    /// <summary>The night as it would have been planned at an instant.</summary>
    public NightPlan PlanAt(Instant now, LocalDate night, Interval dark, VerdictClass? told)
    {
        var key = (FakeRun.NewestAt(now), night);
        if (!runs.TryGetValue(key, out var known))
        {
            // Only this night's last few runs are asked for again.
            if (runs.Count > 8) runs.Clear();
            known = (
                FakeRun.Of(weather, place, now, new Interval(now - RainMemory - Slack, dark.End + Slack)),
                [.. Enumerable.Range(0, Members).Select(member => FakeRun.Of(weather, place, now, new Interval(dark.Start - Slack, dark.End + Slack), member))]);
            runs.Add(key, known);
        }

        return Plan(night, now, known.Run, known.Members, told);
    }

    /// <summary>The night with the weather that came.</summary>
    public NightPlan TruthOf(LocalDate night)
    {
        // As in the rehearsal: a run issued after the night holds its hours as they were.
        var after = NoonOf(night) + Duration.FromHours(30);
        return NightEvaluation.Came(watch, night, FakeRun.Of(weather, place, after, new Interval(after - RainMemory - Slack, after + Slack)), after, sky);
    }

    /// <summary>Mean cloud of the local day of the evening, as the run known at an instant has it.</summary>
    public double DayCloud(LocalDate day, Instant now)
    {
        var issued = FakeRun.NewestAt(now);
        var midnight = watch.Site.Zone.AtStartOfDay(day).ToInstant();
        return Enumerable.Range(0, 24).Average(hour => weather.Forecast(place, midnight + Duration.FromHours(hour), issued).Cloud);
    }

    private Instant NoonOf(LocalDate night) => NightSpan.Noon(watch.Site.Zone, night);

    private NightPlan Plan(LocalDate night, Instant now, ForecastSeries? forecast, ImmutableArray<ForecastSeries> members, VerdictClass? told = null) =>
        NightEvaluation.Of(watch, night, new PlaceWeather { Newest = forecast, Members = members }, ChanceBook.Unlearnt, now, sky, lastTold: told).Plan;
}

using NightWatch.Planning.Conditions;
using NightWatch.Planning.Dew;
using NightWatch.Planning.Grid;
using NightWatch.Planning.SkyBrightness;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Worth;
using NightWatch.Sky.Ephemeris;
using NightWatch.Sky.Nights;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Planning.Nights;

/// <summary>From a watch, a night, a forecast and a clock reading to the whole plan. Pure.</summary>
public static class NightPlanner
{
    private const int DatesOfOneNight = 4;

    /// <summary>Evaluates one watch for one night.</summary>
    /// <param name="inputs">All it depends on.</param>
    /// <param name="ephemeris">Shared positions of Sun and Moon, worth keeping where many nights are planned; null computes this night's
    /// own.</param>
    public static NightPlan Plan(NightInputs inputs, SkyEphemeris? ephemeris = null)
    {
        ephemeris ??= new SkyEphemeris(DatesOfOneNight);
        return Plan(inputs, SkyOf(inputs, ephemeris), ephemeris);
    }

    /// <summary>The first half of it: Sun, Moon and windows of the night, which no weather changes.</summary>
    public static NightSky SkyOf(NightInputs inputs, SkyEphemeris ephemeris)
    {
        var site = inputs.Watch.Site;
        return NightSky.Of(
            site.Position, site.Zone, inputs.Night, inputs.Watch.Subject, inputs.Watch.Limits.MinAltitudeDeg, site.Horizon, ephemeris);
    }

    /// <summary>The second half: everything else, over a sky that was worked out from the same inputs.</summary>
    public static NightPlan Plan(NightInputs inputs, NightSky sky, SkyEphemeris ephemeris)
    {
        var site = inputs.Watch.Site;
        var grid = GridOf(sky);
        var glow = inputs.Glow ?? SiteSkyGlow.Of(site.Position, site.MeasuredSkyBrightness);
        var above = new SiteSky(site.Position, sky.Span, ephemeris);
        return Plan(inputs, sky, glow, grid, SkyTrack.Of(above, inputs.Watch.Subject, glow, grid), at => above.SunAt(at).AltitudeDeg);
    }

    /// <summary>The same with the sky given.</summary>
    internal static NightPlan Plan(
        NightInputs inputs, NightSky sky, SiteSkyGlow glow, NightGrid grid, SkyTrack above, Func<Instant, double> sunAltitudeDegAt)
    {
        var night = EvidenceOf(inputs, sky, glow, grid, above, sunAltitudeDegAt);
        var plan = RunChoice.Of(night) is { } run ? ShootingPlanner.Plan(night, run) : null;
        var lens = plan?.Lens ?? LensTrack.Along(
            grid, night.Weather, inputs.Watch.Kit, night.Limits.DewMarginC, grid.Span, dryBy: grid.Span.End, axisAltitudeDeg: 0);
        return new NightPlan
        {
            Watch = inputs.Watch,
            Night = inputs.Night,
            MadeAt = inputs.Now,
            Sky = sky,
            SkyBrightness = plan?.SkyBrightness ?? SkyBrightnessPlanner.Plan(above, grid, glow, run: null),
            Verdict = plan is null ? VerdictMaker.WithoutRun(night) : VerdictMaker.Of(night, plan),
            Conditions = ConditionSteps.Along(night, lens, plan),
            Sequence = plan?.Sequence,
            Framing = plan?.Framing,
            Lens = plan?.LensTold,
            Motion = plan?.Motion,
            Storage = plan?.Storage,
            SkyLevel = plan?.SkyLevel,
            Ground = plan?.Ground,
            Power = plan?.Power,
            Cautions = plan?.Cautions ?? [],
            Timeline = TimelineBuilder.Of(night, plan),
            Packing = PackingList.Of(night, plan),
            Summary = NightSummaries.Of(night, plan, lens),
            RainBefore = inputs.RainBefore,
            Forecast = inputs.Weather.Newest is { } forecast ? ForecastOrigin.Of(forecast) : null,
            OtherForecasts =
            [
                .. new[] { inputs.Weather.SecondOpinion }
                    .Concat(inputs.Weather.Members.Take(1))
                    .OfType<ForecastSeries>()
                    .Select(ForecastOrigin.Of),
            ],
            LeaveBy = plan?.Leave.LeaveHome,
        };
    }

    /// <summary>What the factors judge by.</summary>
    internal static NightEvidence EvidenceOf(
        NightInputs inputs, NightSky sky, SiteSkyGlow glow, NightGrid grid, SkyTrack above, Func<Instant, double> sunAltitudeDegAt)
    {
        var weather = WeatherTrack.Of(inputs.Weather.Newest, grid);
        var shares = WeatherWorth.Of(weather, inputs.Watch.Limits);
        var dark = SkyWorth.Dark(above, inputs.Watch.Limits, inputs.Watch.Subject);
        return new NightEvidence
        {
            Inputs = inputs,
            Sky = sky,
            Grid = grid,
            Above = above,
            Glow = glow,
            SunAltitudeDegAt = sunAltitudeDegAt,
            Weather = weather,
            Dark = dark,
            Shares = shares,
            Worth = shares.Under(dark),
            Candidates = CandidateTimes.Of(sky, inputs.Watch.Limits),
        };
    }

    /// <summary>Sunset to sunrise, or the whole span where they do not happen.</summary>
    internal static NightGrid GridOf(NightSky sky) =>
        NightGrid.Over(sky.Sun is { Set: { } set, Rise: { } rise } && set < rise ? new Interval(set, rise) : sky.Span);
}

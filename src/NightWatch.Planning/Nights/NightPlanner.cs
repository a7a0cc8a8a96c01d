using NightWatch.Planning.Conditions;
using NightWatch.Planning.Shooting;
using NightWatch.Planning.Verdicts;
using NightWatch.Sky.Nights;
using NodaTime;

namespace NightWatch.Planning.Nights;

/// <summary>From a watch, a night, a forecast and a clock reading to the whole plan. Pure.</summary>
public static class NightPlanner
{
    /// <summary>Evaluates one watch for one night.</summary>
    public static NightPlan Plan(NightInputs inputs)
    {
        var site = inputs.Watch.Site;
        var sky = NightSky.Of(site.Position, site.Zone, inputs.Night, inputs.Watch.Subject, inputs.Watch.Limits.MinAltitudeDeg, site.Horizon);
        var grid = GridOf(sky);
        return Plan(inputs, sky, grid, SkyTrack.Of(new SiteSky(site.Position, grid.Span), inputs.Watch.Subject, grid));
    }

    /// <summary>The same with the sky given.</summary>
    internal static NightPlan Plan(NightInputs inputs, NightSky sky, NightGrid grid, SkyTrack above)
    {
        var night = new NightEvidence
        {
            Inputs = inputs,
            Sky = sky,
            Grid = grid,
            Above = above,
            Weather = WeatherTrack.Of(inputs.Forecast, grid),
            Candidates = CandidateTimes.Of(sky, inputs.Watch.Limits),
        };
        var plan = RunChoice.BestOrLongest(night) is { } run ? Shooting(night, run) : null;
        var lens = plan?.Lens ?? Lens(night, grid.Span, axisAltitudeDeg: 0);
        return new NightPlan
        {
            Watch = inputs.Watch,
            Night = inputs.Night,
            MadeAt = inputs.Now,
            Sky = sky,
            Verdict = plan is null ? VerdictMaker.WithoutRun(night) : VerdictMaker.Of(night, plan),
            Conditions = ConditionSteps.Along(grid, above, night.Weather, lens),
            Sequence = plan?.Sequence,
            Timeline = TimelineBuilder.Of(night, plan),
            Packing = PackingList.Of(night, plan),
            Summary = NightSummaries.Of(night, plan, lens),
            Forecast = inputs.Forecast is { } f ? new ForecastOrigin(f.FeedId, f.ModelId, f.IssuedAt, f.RetrievedAt, f.Attribution) : null,
            LeaveBy = plan?.Leave.LeaveHome,
        };
    }

    /// <summary>Sunset to sunrise, or the whole span where they do not happen.</summary>
    internal static NightGrid GridOf(NightSky sky) =>
        NightGrid.Over(sky.Sun is { Set: { } set, Rise: { } rise } && set < rise ? new Interval(set, rise) : sky.Span);

    private static ShootingPlan Shooting(NightEvidence night, Run run)
    {
        var watch = night.Watch;
        var middle = night.Above.Steps[(run.First + run.Last) / 2].Subject;
        var declination = middle is { } subject ? Declination.Of(subject, watch.Site.Position.LatitudeDeg) : 0;
        var sequence = SequencePlanner.Plan(run.Span, watch.Kit, watch.Sequence, declination, watch.Kit.Iso ?? DefaultIso);
        var leave = LeaveTimes.For(run.Span, night.Sky, watch.Outing);
        var outFrom = Instant.Max(night.Grid.Start, Instant.Min(leave.SetUpDone, run.Span.Start));
        var lens = Lens(night, new Interval(outFrom, run.Span.End), middle?.AltitudeDeg ?? 90);
        return new ShootingPlan(run, sequence, leave, lens);
    }

    private static LensTrack Lens(NightEvidence night, Interval whenOut, double axisAltitudeDeg) =>
        LensTrack.Along(night.Grid, night.Weather, night.Watch.Kit, whenOut, axisAltitudeDeg, night.Limits.DewMarginC);

    /// <summary>A common choice under a dark sky with a fast wide lens (common practice, no source).</summary>
    private const int DefaultIso = 3200;
}

using NightWatch.Planning.Nights;
using NightWatch.Planning.Reasons;
using NightWatch.Sky.Subjects;
using NightWatch.Words;
using NodaTime;

namespace NightWatch.Pictures;

/// <summary>What the chart's strips show of one plan.</summary>
/// <param name="Times">The grid.</param>
/// <param name="Contents">From top to bottom.</param>
internal sealed record NightStrips(IReadOnlyList<Instant> Times, IReadOnlyList<StripContent> Contents)
{
    /// <summary>The strips of a plan; the last is there only where the sky's level in the frame is known.</summary>
    public static NightStrips Of(NightPlan plan)
    {
        var units = Speech.To(plan.Watch).Units;
        List<StripContent> strips = [Altitudes(plan), Cloud(plan, units), Dew(plan, units)];
        if (plan.Conditions.Any(c => c.SkyShare is not null)) strips.Add(SkyLevel(plan, units));
        return new NightStrips([.. plan.Conditions.Select(c => c.At)], strips);
    }

    private static StripContent Altitudes(NightPlan plan)
    {
        var subject = Values(plan, c => c.Subject?.AltitudeDeg);
        var moon = Values(plan, c => c.Moon.AltitudeDeg);
        var name = NameOf(plan.Watch.Subject);
        var most = Math.Max(subject.Max() ?? 0, moon.Max() ?? 0);
        var high = Math.Max(30, Math.Ceiling((most + 6) / 15) * 15);
        var mark = Math.Min(high, 90); // Above the zenith is room for a name, nothing else.
        var up = subject.Max() is { } top and > 0 ? $"{name} up to {top:0}°" : plan.Watch.Subject is Subject.Stars ? "No subject" : $"{name} not up";
        var moonUp = moon.Max() is > 2 ? "Moon dashed" : "Moon down";
        double? limit = plan.Watch.Subject is Subject.Stars ? null : plan.Watch.Limits.MinAltitudeDeg;
        (double, string)[] marks = limit is { } least ? [(least, $"{least:0}°"), (mark, $"{mark:0}°")] : [(mark, $"{mark:0}°")];
        return new StripContent(
            "Altitude", $"{up}, {moonUp}", 160, 0, high, marks, limit,
            [new Curve(moon, CurveStyle.Dashed, moon.Max() is > 2 ? "Moon" : null), new Curve(subject, CurveStyle.Solid, subject.Max() is > 2 ? name : null)]);
    }

    private static StripContent Cloud(NightPlan plan, UnitWords units)
    {
        var figures = plan.Summary.CloudMean is null && plan.Summary.CloudMost is null
            ? "unknown"
            : $"{units.Figure(plan.Summary.CloudMean, Unit.Fraction)} on average, {units.Figure(plan.Summary.CloudMost, Unit.Fraction)} at most";
        var limit = plan.Watch.Limits.Cloud.Caution;
        return new StripContent(
            "Cloud", figures, 120, 0, 1, [(limit, units.Figure(limit, Unit.Fraction)), (1, "100 %")], limit,
            [new Curve(Values(plan, c => c.Cloud), CurveStyle.Filled)]);
    }

    private static StripContent Dew(NightPlan plan, UnitWords units)
    {
        var margin = Values(plan, c => c.LensDewMarginK);
        var clock = Speech.To(plan.Watch).Clock;
        var figures = plan.Summary.DewOnset is { } onset ? $"dew from {clock.Time(onset)} without a heater"
            : plan.Summary.LeastDewMarginK is { } least ? $"at least {units.Figure(least, Unit.Kelvin)} above dew point"
            : "dew unknown";
        var high = Math.Max(4, Math.Ceiling(margin.Max() ?? 4));
        return new StripContent(
            "Lens", figures, 100, -2, high, [(0, "dew"), (high, $"+{units.Figure(high, Unit.Kelvin).Replace(" ", "", StringComparison.Ordinal)}")], 0,
            [new Curve([.. margin.Select(m => m is { } v ? Math.Max(v, -2) : m)], CurveStyle.FilledBelowZero)]);
    }

    private static StripContent SkyLevel(NightPlan plan, UnitWords units)
    {
        var dark = plan.Conditions.Where(c => plan.Verdict.Run is not { } run || run.Contains(c.At)).Select(c => c.SkyShare).Max();
        var limit = plan.Watch.Limits.SkyShareMost;
        return new StripContent(
            "Sky in frame", $"{units.Figure(dark, Unit.Fraction)} of full scale at most", 70, 0, 1, [(limit, units.Figure(limit, Unit.Fraction))], limit,
            [new Curve([.. plan.Conditions.Select(c => c.SkyShare is { } s ? Math.Min(s, 1) : (double?)null)], CurveStyle.Solid)]);
    }

    private static double?[] Values(NightPlan plan, Func<ConditionStep, double?> of) => [.. plan.Conditions.Select(of)];

    private static string NameOf(Subject subject) => subject switch
    {
        Subject.GalacticCore => "Core",
        Subject.GalacticBand => "Band",
        Subject.FixedPoint point when point.Name.Length <= 16 => point.Name,
        _ => "Subject",
    };
}

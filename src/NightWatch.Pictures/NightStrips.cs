using NightWatch.Planning.Nights;
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
        var speech = Speech.To(plan.Watch);
        List<StripContent> strips = [Altitudes(plan, speech), Cloud(plan, speech), Dew(plan, speech)];
        if (plan.Conditions.Any(c => c.SkyShare is not null)) strips.Add(SkyLevel(plan, speech));
        return new NightStrips([.. plan.Conditions.Select(c => c.At)], strips);
    }

    private static StripContent Altitudes(NightPlan plan, Speech speech)
    {
        var subject = Values(plan, c => c.Subject?.AltitudeDeg);
        var moon = Values(plan, c => c.Moon.AltitudeDeg);
        var language = speech.Language;
        var name = language.CurveName(plan.Watch.Subject);
        var moonIsUp = moon.Max() is > 2;
        var most = Math.Max(subject.Max() ?? 0, moon.Max() ?? 0);
        var high = Math.Max(30, Math.Ceiling((most + 6) / 15) * 15);
        var mark = Math.Min(high, 90); // Above the zenith is room for a name, nothing else.
        double? limit = plan.Watch.Subject is Subject.Stars ? null : plan.Watch.Limits.MinAltitudeDeg;
        (double, string)[] marks = limit is { } least
            ? [(least, speech.Degrees(least)), (mark, speech.Degrees(mark))]
            : [(mark, speech.Degrees(mark))];
        return new StripContent(
            language.AltitudeStrip,
            language.Altitudes(plan.Watch.Subject, subject.Max(), moonIsUp, speech),
            160,
            0,
            high,
            marks,
            limit,
            [
                new Curve(moon, CurveStyle.Dashed, moonIsUp ? language.MoonCurve : null),
                new Curve(subject, CurveStyle.Solid, subject.Max() is > 2 ? name : null),
            ]);
    }

    private static StripContent Cloud(NightPlan plan, Speech speech)
    {
        var limit = plan.Watch.Limits.Cloud.Caution;
        return new StripContent(
            speech.Language.CloudStrip,
            speech.Language.CloudFigures(plan.Summary, speech),
            120,
            0,
            1,
            [(limit, speech.Percent(limit)), (1, speech.Percent(1))],
            limit,
            [new Curve(Values(plan, c => c.Cloud), CurveStyle.Filled)]);
    }

    private static StripContent Dew(NightPlan plan, Speech speech)
    {
        var margin = Values(plan, c => c.LensDewMarginK);
        var language = speech.Language;
        var high = Math.Max(4, Math.Ceiling(margin.Max() ?? 4));
        return new StripContent(
            language.LensStrip,
            language.LensFigures(plan.Summary, speech),
            100,
            -2,
            high,
            [(0, language.DewMark), (high, language.LensMark(high, speech))],
            0,
            [new Curve([.. margin.Select(m => m is { } v ? Math.Max(v, -2) : m)], CurveStyle.FilledBelowZero)]);
    }

    private static StripContent SkyLevel(NightPlan plan, Speech speech)
    {
        var dark = plan.Conditions.Where(c => plan.Verdict.Run is not { } run || run.Contains(c.At)).Select(c => c.SkyShare).Max();
        var limit = plan.Watch.Limits.SkyShareMost;
        return new StripContent(
            speech.Language.SkyStrip, speech.Language.SkyFigures(dark, speech), 70, 0, 1, [(limit, speech.Percent(limit))], limit,
            [new Curve([.. plan.Conditions.Select(c => c.SkyShare is { } s ? Math.Min(s, 1) : (double?)null)], CurveStyle.Solid)]);
    }

    private static double?[] Values(NightPlan plan, Func<ConditionStep, double?> of) => [.. plan.Conditions.Select(of)];
}

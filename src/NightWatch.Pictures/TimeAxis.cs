using NightWatch.Planning.Nights;
using NightWatch.Planning.Verdicts;
using NightWatch.Words;
using NodaTime;

namespace NightWatch.Pictures;

/// <summary>Time across the picture, with what belongs to time alone: darkness, the shooting window, the hours.</summary>
internal sealed class TimeAxis
{
    /// <summary>White at the right.</summary>
    public const double MarginPx = 14;

    /// <summary>Left edge of the strips.</summary>
    public const double LeftPx = 76;

    /// <summary>Right edge of the strips.</summary>
    public const double RightPx = NightChart.WidthPx - MarginPx;

    /// <summary>Room for the bracket above the first strip.</summary>
    public const double HeadPx = 62;

    /// <summary>Room for hours and dates below the last.</summary>
    public const double FootPx = 66;

    private const string Ink = "#14181f";

    // From daylight to full night: five greys whose luminance falls steadily, so that print keeps the order.
    private static readonly (double BelowDeg, string Color)[] Shades =
        [(-18, "#c5cbd8"), (-12, "#d5dae4"), (-6, "#e4e7ee"), (-0.8333, "#f1f3f6"), (90, "#ffffff")];

    private readonly NightPlan plan;
    private readonly DateTimeZone zone;

    /// <param name="plan">The night; at least two conditions.</param>
    public TimeAxis(NightPlan plan)
    {
        this.plan = plan;
        zone = plan.Watch.Site.Zone;
        Speech = Speech.To(plan.Watch);
        Start = plan.Conditions[0].At;
        End = plan.Conditions[^1].At;
    }

    /// <summary>To whom the picture speaks.</summary>
    public Speech Speech { get; }

    /// <summary>Left end.</summary>
    public Instant Start { get; }

    /// <summary>Right end.</summary>
    public Instant End { get; }

    /// <summary>Where an instant lies; outside the night, at its edge.</summary>
    public double X(Instant at) => LeftPx + (RightPx - LeftPx) * Math.Clamp((at - Start) / (End - Start), 0, 1);

    /// <summary>Twilight and night as shades behind a strip.</summary>
    public IEnumerable<Shape> Darkness(double top, double bottom)
    {
        var steps = plan.Conditions;
        for (var i = 0; i < steps.Count - 1;)
        {
            var color = ShadeOf(steps[i].SunAltitudeDeg);
            var j = i + 1;
            while (j < steps.Count - 1 && ShadeOf(steps[j].SunAltitudeDeg) == color) j++;
            yield return Box(X(steps[i].At), top, X(steps[j].At), bottom, color);
            i = j;
        }
    }

    /// <summary>The shooting window: a heavy bracket above the strips, thin lines through them, its times in words.</summary>
    public IEnumerable<Shape> Bracket(NightPlan night, IReadOnlyList<Strip> strips)
    {
        var words = Speech.Language.OverBracket(night.Verdict, Speech);
        if (night.Verdict.Run is not { } run)
        {
            yield return new Shape.Words(new Spot(LeftPx, 32), words, 25, Bold: true);
            yield break;
        }

        var off = night.Verdict.Class == VerdictClass.NoGo;
        var (x0, x1) = (X(run.Start), X(run.End));
        var top = HeadPx - 14;
        yield return new Shape.Line([new(x0, HeadPx), new(x0, top), new(x1, top), new(x1, HeadPx)], Ink, off ? 2 : 5);
        yield return new Shape.Words(new Spot(Inside((x0 + x1) / 2, words.Length * 8.6), 33), words, 25, Bold: true, Anchor.Middle);
        foreach (var strip in strips)
        {
            yield return new Shape.Line([new(x0, strip.Top), new(x0, strip.Bottom)], Ink, 2, off ? 6 : 0);
            yield return new Shape.Line([new(x1, strip.Top), new(x1, strip.Bottom)], Ink, 2, off ? 6 : 0);
        }
    }

    /// <summary>Whole local hours, the two dates, the zone's abbreviation.</summary>
    public IEnumerable<Shape> Ticks(double y)
    {
        var hours = (End - Start).TotalHours;
        var every = hours <= 7 ? 1 : hours <= 14 ? 2 : 4;
        foreach (var at in QuarterHours())
        {
            var local = at.InZone(zone).LocalDateTime;
            if (local.Minute != 0) continue;
            var labelled = local.Hour % every == 0;
            yield return new Shape.Line([new(X(at), y), new(X(at), y + (labelled ? 9 : 5))], Ink, 2);
            if (labelled && X(at) is > LeftPx + 14 and < RightPx - 22)
                yield return new Shape.Words(new Spot(X(at), y + 30), Speech.Clock.Time(at), 21, Anchor: Anchor.Middle);
        }

        var midnight = plan.Night.PlusDays(1).AtStartOfDayInZone(zone).ToInstant();
        yield return new Shape.Words(new Spot(LeftPx, y + 57), Speech.Clock.Day(Start), 21, Bold: true);
        if (midnight > Start && X(midnight) is > LeftPx + 130 and < RightPx - 190)
            yield return new Shape.Words(new Spot(X(midnight), y + 57), Speech.Clock.Day(midnight), 21, Bold: true);
        yield return new Shape.Words(new Spot(RightPx, y + 57), Speech.Clock.Abbreviation(End), 21, Anchor: Anchor.End);
    }

    /// <summary>The middle of a text nearest to <paramref name="x"/> that keeps it inside the picture.</summary>
    public static double Inside(double x, double halfWidth) =>
        2 * halfWidth >= NightChart.WidthPx ? NightChart.WidthPx / 2.0 : Math.Clamp(x, halfWidth, NightChart.WidthPx - halfWidth);

    /// <summary>A filled box.</summary>
    public static Shape Box(double x0, double y0, double x1, double y1, string color) =>
        new Shape.Area([new(x0, y0), new(x1, y0), new(x1, y1), new(x0, y1)], color);

    private static string ShadeOf(double sunAltitudeDeg) =>
        Shades.First(shade => sunAltitudeDeg < shade.BelowDeg || shade.BelowDeg == 90).Color;

    // Every zone's whole hours fall on quarters of UTC hours.
    private IEnumerable<Instant> QuarterHours()
    {
        const long QuarterS = 900;
        for (var s = (Start.ToUnixTimeSeconds() + QuarterS - 1) / QuarterS * QuarterS; s <= End.ToUnixTimeSeconds(); s += QuarterS)
            yield return Instant.FromUnixTimeSeconds(s);
    }
}

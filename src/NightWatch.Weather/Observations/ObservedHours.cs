using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Weather.Observations;

/// <summary>A night's hours as an aerodrome saw them, read twice where such a report cannot see.</summary>
public static class ObservedHours
{
    /// <summary>A report serves an hour if it is no farther from it than this (routine reports come every hour or half hour).</summary>
    private static readonly Duration Near = Duration.FromMinutes(45);

    private static readonly Duration Hour = Duration.FromHours(1);

    /// <summary>Falling rain or snow without an amount: more than the tenth of a millimetre an hour from which it counts.</summary>
    private const double WetMm = 0.2;

    /// <summary>
    /// Cloud, fog, visibility, gusts and whether it rained by the reports; air, dew point and wind by the later hours. Cloud that a station
    /// cannot see, and an hour without a report, are clear in the one reading and covered in the other; no feed fills them in.
    /// </summary>
    /// <param name="later">The feed's own later hours; null: none.</param>
    /// <param name="reports">Of one station, in any order.</param>
    /// <param name="span">The hours wanted.</param>
    /// <param name="dark">Of them those that decide; the others are neither counted as seen nor as missed.</param>
    /// <returns>Null: no report is of the dark.</returns>
    public static SeenHours? Over(ForecastSeries? later, IReadOnlyList<AerodromeReport> reports, Interval span, Interval dark)
    {
        ArgumentNullException.ThrowIfNull(reports);
        var (best, worst) = (new ForecastSeriesBuilder(), new ForecastSeriesBuilder());
        AerodromeReport? any = null;
        var (blind, missing, isAutomatic) = (0, 0, false);
        for (var hour = WholeHour.AtOrBefore(span.Start); hour < span.End + Hour; hour += Hour)
        {
            var report = reports.Where(report => Apart(report, hour) <= Near).MinBy(report => Apart(report, hour));
            Add(best, hour, report, report?.LeastCloud ?? 0, later);
            Add(worst, hour, report, report?.MostCloud ?? 1, later);
            if (!WholeHour.IsOf(hour, dark)) continue;
            any ??= report;
            if (report?.LeastCloud is null) missing++;
            else if (report.LeastCloud < report.MostCloud) blind++;
            isAutomatic |= report is { Sight.IsAutomatic: true };
        }

        if (any is null) return null;
        return new SeenHours(Build(best, any, reports), Build(worst, any, reports), blind, missing, isAutomatic);
    }

    private static void Add(ForecastSeriesBuilder builder, Instant hour, AerodromeReport? report, double cloud, ForecastSeries? later)
    {
        var period = new Interval(hour, hour + Hour);
        builder
            .Add(InstantQuantity.CloudAreaFraction, hour, cloud)
            .Add(InstantQuantity.FogAreaFraction, hour, report is { IsFoggy: true } ? 1 : 0)
            .Add(InstantQuantity.VisibilityM, hour, report?.VisibilityM)
            .Add(PeriodQuantity.PrecipitationMm, period.Start, period.End, report is { IsWet: true } ? WetMm : 0)
            .Add(PeriodQuantity.GustMps, period.Start, period.End, report?.GustMps ?? later?.Over(PeriodQuantity.GustMps, period).Value);
        foreach (var quantity in (InstantQuantity[])[InstantQuantity.AirTemperatureC, InstantQuantity.DewPointC, InstantQuantity.WindMps])
            builder.Add(quantity, hour, later?.At(quantity, hour).Value);
    }

    private static ForecastSeries Build(ForecastSeriesBuilder hours, AerodromeReport any, IReadOnlyList<AerodromeReport> reports)
    {
        var made = reports.Max(report => report.At);
        return hours.Build("metar", any.Station, made, made, Source, new ForecastCell(any.LatitudeDeg, any.LongitudeDeg, null));
    }

    /// <summary>Whose reports they are.</summary>
    public static Attribution Source { get; } =
        new("Aerodrome reports by NOAA's Aviation Weather Center", new Uri("https://aviationweather.gov/"), "US public domain");

    private static Duration Apart(AerodromeReport report, Instant hour) => report.At > hour ? report.At - hour : hour - report.At;
}

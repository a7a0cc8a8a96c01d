using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Weather.Observations;

/// <summary>A night's hours as an aerodrome saw them, completed by the feed's own later hours where such a report cannot see.</summary>
public static class ObservedHours
{
    /// <summary>A report serves an hour if it is no farther from it than this (routine reports come every hour or half hour).</summary>
    private static readonly Duration Near = Duration.FromMinutes(45);

    private static readonly Duration Hour = Duration.FromHours(1);

    /// <summary>Falling rain or snow without an amount: more than the tenth of a millimetre an hour from which it counts.</summary>
    private const double WetMm = 0.2;

    /// <summary>
    /// Cloud, fog, visibility, gusts and whether it rained by the reports; the rest by the later hours. Where a report saw no low cloud and
    /// cannot see the high, medium and high cloud are the later hours'. An hour without a report stays unknown.
    /// </summary>
    /// <param name="later">The feed's own later hours; null: none.</param>
    /// <param name="reports">Of one station, in any order.</param>
    /// <param name="span">The hours wanted.</param>
    /// <returns>Null: no report is of these hours.</returns>
    public static ForecastSeries? Over(ForecastSeries? later, IReadOnlyList<AerodromeReport> reports, Interval span)
    {
        ArgumentNullException.ThrowIfNull(reports);
        var builder = new ForecastSeriesBuilder();
        AerodromeReport? any = null;
        for (var hour = WholeHour.AtOrBefore(span.Start); hour < span.End + Hour; hour += Hour)
        {
            if (reports.Where(report => Apart(report, hour) <= Near).MinBy(report => Apart(report, hour)) is not { } report) continue;
            any = report;
            var period = new Interval(hour, hour + Hour);
            builder
                .Add(InstantQuantity.CloudAreaFraction, hour, report.Sky.Fraction ?? (report.Sky.IsClearBelowOnly ? Above(later, hour) : null))
                .Add(InstantQuantity.FogAreaFraction, hour, report.IsFoggy ? 1 : 0)
                .Add(InstantQuantity.VisibilityM, hour, report.VisibilityM)
                .Add(PeriodQuantity.PrecipitationMm, period.Start, period.End, report.IsWet ? WetMm : 0)
                .Add(PeriodQuantity.GustMps, period.Start, period.End, report.GustMps ?? later?.Over(PeriodQuantity.GustMps, period).Value);
            foreach (var quantity in (InstantQuantity[])[InstantQuantity.AirTemperatureC, InstantQuantity.DewPointC, InstantQuantity.WindMps])
                builder.Add(quantity, hour, later?.At(quantity, hour).Value);
        }

        if (any is null) return null;
        var made = reports.Max(report => report.At);
        return builder.Build("metar", any.Station, made, made, Source, new ForecastCell(any.LatitudeDeg, any.LongitudeDeg, null));
    }

    /// <summary>Whose reports they are.</summary>
    public static Attribution Source { get; } = new("Aerodrome reports by NOAA's Aviation Weather Center", new Uri("https://aviationweather.gov/"), "US public domain");

    /// <summary>Medium and high cloud that overlap at random; the total where the feed has no layers.</summary>
    private static double? Above(ForecastSeries? later, Instant hour) =>
        later?.At(InstantQuantity.MediumCloudAreaFraction, hour).Value is { } medium && later.At(InstantQuantity.HighCloudAreaFraction, hour).Value is { } high
            ? 1 - (1 - medium) * (1 - high)
            : later?.At(InstantQuantity.CloudAreaFraction, hour).Value;

    private static Duration Apart(AerodromeReport report, Instant hour) => report.At > hour ? report.At - hour : hour - report.At;
}

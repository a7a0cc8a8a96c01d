using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Weather.Observations;

/// <summary>
/// A night's hours as a witness tells them, read twice: between the readings lies all that the witness could not see. What comes of the
/// night by both is known; where they differ the witness does not tell.
/// </summary>
/// <param name="Best">What was not seen was clear and dry.</param>
/// <param name="Worst">What was not seen was covered.</param>
/// <param name="Blind">Hours of the dark whose high cloud was not seen.</param>
/// <param name="Missing">Hours of the dark of which the witness says nothing.</param>
/// <param name="IsAutomatic">An hour of the dark at least was told by an instrument alone.</param>
public sealed record SeenHours(ForecastSeries Best, ForecastSeries Worst, int Blind, int Missing, bool IsAutomatic)
{
    /// <summary>Nothing was out of sight: there is one reading.</summary>
    public bool IsWhole => ReferenceEquals(Best, Worst);

    private static readonly Duration Hour = Duration.FromHours(1);

    /// <summary>A feed's own later hours: it sees all the sky, and may lack hours.</summary>
    /// <param name="later">The hours.</param>
    /// <param name="span">Those wanted.</param>
    /// <param name="dark">Of them those that decide; the others are not counted.</param>
    /// <returns>Null: it tells of no hour of the dark.</returns>
    public static SeenHours? Of(ForecastSeries later, Interval span, Interval dark)
    {
        ArgumentNullException.ThrowIfNull(later);
        var (missing, hours) = (new List<Instant>(), 0);
        for (var hour = WholeHour.AtOrBefore(span.Start); hour < span.End + Hour; hour += Hour)
        {
            if (WholeHour.IsOf(hour, dark)) hours++;
            if (later.At(InstantQuantity.CloudAreaFraction, hour) is not { Value: not null, Quality: Quality.Direct }) missing.Add(hour);
        }

        if (missing.Count == 0) return new SeenHours(later, later, 0, 0, IsAutomatic: false);
        var ofTheDark = missing.Count(hour => WholeHour.IsOf(hour, dark));
        return ofTheDark == hours
            ? null
            : new SeenHours(Filled(later, missing, 0), Filled(later, missing, 1), 0, ofTheDark, IsAutomatic: false);
    }

    /// <summary>The same hours with the cloud of some filled in.</summary>
    private static ForecastSeries Filled(ForecastSeries series, IReadOnlyCollection<Instant> hours, double cloud)
    {
        var builder = new ForecastSeriesBuilder();
        foreach (var (quantity, points) in series.Instants)
        {
            foreach (var point in points) builder.Add(quantity, point.At, point.Value, point.Quality);
        }

        foreach (var (quantity, parts) in series.Periods)
        {
            foreach (var part in parts) builder.Add(quantity, part.Start, part.End, part.Value, part.Quality);
        }

        foreach (var hour in hours) builder.Add(InstantQuantity.CloudAreaFraction, hour, cloud);
        return builder.Build(series.FeedId, series.ModelId, series.IssuedAt, series.RetrievedAt, series.Attribution, series.Cell);
    }
}

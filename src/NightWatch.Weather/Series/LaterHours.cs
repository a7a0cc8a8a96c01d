using System.Collections.Immutable;
using NodaTime;

namespace NightWatch.Weather.Series;

/// <summary>Hours of a night as the runs say them that were made when the hours had come, or were about to.</summary>
/// <remarks>
/// No observation: the first hours of a run are what its model made of the observations. They err as the model errs, and so are kind to a
/// forecast of the same model.
/// </remarks>
public static class LaterHours
{
    /// <summary>An hour farther ahead of its run than this is a forecast (engineering choice: models are made every six hours).</summary>
    public static readonly Duration LongestLead = Duration.FromHours(6);

    private static readonly Duration Hour = Duration.FromHours(1);
    private static readonly ImmutableArray<InstantQuantity> instants = [.. Enum.GetValues<InstantQuantity>()];
    private static readonly ImmutableArray<PeriodQuantity> periods = [.. Enum.GetValues<PeriodQuantity>()];

    /// <summary>Each hour from the newest run that speaks of its cloud.</summary>
    /// <param name="runs">Runs of one feed and place, in any order.</param>
    /// <param name="span">The hours wanted.</param>
    /// <returns>Null: no run tells of any of them. Hours that none tells of are left out, and so unknown.</returns>
    public static ForecastSeries? Of(IEnumerable<ForecastSeries> runs, Interval span)
    {
        ForecastSeries[] newestFirst = [.. runs.OrderByDescending(Made)];
        var builder = new ForecastSeriesBuilder();
        ForecastSeries? last = null;
        // One instant beyond the last hour, so that it can be interpolated.
        for (var hour = WholeHour.AtOrBefore(span.Start); hour < span.End + Hour; hour += Hour)
        {
            if (newestFirst.FirstOrDefault(run => Tells(run, hour)) is not { } run) continue;
            last ??= run;
            var period = new Interval(hour, hour + Hour);
            foreach (var quantity in instants) builder.Add(quantity, hour, run.At(quantity, hour).Value);
            foreach (var quantity in periods) builder.Add(quantity, period.Start, period.End, run.Over(quantity, period).Value);
        }

        return last is null
            ? null
            : builder.Build(last.FeedId, last.ModelId, Made(newestFirst[0]), newestFirst[0].RetrievedAt, last.Attribution, last.Cell);
    }

    /// <summary>Whether a run tells of every hour of a span.</summary>
    public static bool Tells(ForecastSeries run, Interval span)
    {
        ArgumentNullException.ThrowIfNull(run);
        for (var hour = WholeHour.AtOrBefore(span.Start); hour < span.End + Hour; hour += Hour)
        {
            if (!Tells(run, hour)) return false;
        }

        return true;
    }

    private static bool Tells(ForecastSeries run, Instant hour) =>
        hour - Made(run) <= LongestLead && run.At(InstantQuantity.CloudAreaFraction, hour).Value is not null;

    private static Instant Made(ForecastSeries run) => run.IssuedAt ?? run.RetrievedAt;
}

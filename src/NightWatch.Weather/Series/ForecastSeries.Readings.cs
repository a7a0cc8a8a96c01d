using System.Collections.Immutable;
using NodaTime;

namespace NightWatch.Weather.Series;

public sealed partial class ForecastSeries
{
    /// <summary>No feed read here has a coarser step; across anything wider a straight line would be invention.</summary>
    private static readonly Duration WidestStep = Duration.FromHours(6);

    /// <summary>The value at an instant: the feed's own, or on the straight line between its neighbours.</summary>
    /// <remarks>
    /// The feed's step at a gap is the wider of the gaps next to it, so that one missing hour stays unknown while the seam from hourly
    /// to six-hourly values does not. A direction goes the shorter way round the circle.
    /// </remarks>
    /// <returns>Unknown before the first point, after the last, and across a gap wider than the feed's step there (at most 6 h).</returns>
    public Reading At(InstantQuantity quantity, Instant at)
    {
        if (!Instants.TryGetValue(quantity, out var points) || points.IsEmpty)
            return Reading.Unknown;
        return Read(points, quantity, FirstAtOrAfter(points, at), at);
    }

    /// <summary>
    /// The values at instants a step apart, NaN where unknown: as <see cref="At"/> reads them one by one, in one walk over the points.
    /// </summary>
    /// <param name="quantity">What to read.</param>
    /// <param name="start">The first instant.</param>
    /// <param name="step">From one instant to the next, above zero.</param>
    /// <param name="values">Filled, one value an instant.</param>
    public void Along(InstantQuantity quantity, Instant start, Duration step, Span<double> values)
    {
        var points = Instants.GetValueOrDefault(quantity, []);
        var (after, at) = (FirstAtOrAfter(points, start), start);
        for (var i = 0; i < values.Length; i++, at += step)
        {
            while (after < points.Length && points[after].At < at) after++;
            values[i] = Read(points, quantity, after, at).Value ?? double.NaN;
        }
    }

    /// <param name="points">Of the quantity.</param>
    /// <param name="quantity">What is read.</param>
    /// <param name="after">The first point at or after the instant.</param>
    /// <param name="at">The instant.</param>
    private static Reading Read(ImmutableArray<InstantPoint> points, InstantQuantity quantity, int after, Instant at)
    {
        if (after == points.Length)
            return Reading.Unknown;
        if (points[after].At == at)
            return new Reading(points[after].Value, points[after].Quality, StepAt(points, after));
        if (after == 0 || !IsOneStep(points, after - 1))
            return Reading.Unknown;

        var (a, b) = (points[after - 1], points[after]);
        var share = (at - a.At) / (b.At - a.At);
        var value = quantity == InstantQuantity.WindFromDeg
            ? Compass.Between(a.Value, b.Value, share)
            : a.Value + share * (b.Value - a.Value);
        return new Reading(value, Worst(Quality.Interpolated, a.Quality, b.Quality), b.At - a.At);
    }

    /// <summary>A period quantity over any period: amounts by overlap, gusts and probabilities by their maximum.</summary>
    /// <remarks>An empty period reads the feed's period it lies in; its amount is then nothing.</remarks>
    /// <returns>Unknown unless the feed's periods cover the whole of <paramref name="period"/>.</returns>
    public Reading Over(PeriodQuantity quantity, Interval period)
    {
        if (!period.HasStart || !period.HasEnd || !Periods.TryGetValue(quantity, out var periods))
            return Reading.Unknown;
        return Read(periods, quantity, FirstEndingAfter(periods, period.Start), period.Start, period.End);
    }

    /// <summary>The values over periods that follow each other, NaN where unknown: as <see cref="Over"/> reads them, in one walk.</summary>
    /// <param name="quantity">What to read.</param>
    /// <param name="start">Of the first period.</param>
    /// <param name="step">Length of every period, above zero.</param>
    /// <param name="values">Filled, one value a period.</param>
    public void Along(PeriodQuantity quantity, Instant start, Duration step, Span<double> values)
    {
        var periods = Periods.GetValueOrDefault(quantity, []);
        var (first, from) = (FirstEndingAfter(periods, start), start);
        for (var i = 0; i < values.Length; i++, from += step)
        {
            while (first < periods.Length && periods[first].End <= from) first++;
            values[i] = Read(periods, quantity, first, from, from + step).Value ?? double.NaN;
        }
    }

    /// <param name="periods">Of the quantity.</param>
    /// <param name="quantity">What is read.</param>
    /// <param name="first">The first period that ends after the start.</param>
    /// <param name="from">The start.</param>
    /// <param name="to">The end.</param>
    private static Reading Read(ImmutableArray<PeriodPoint> periods, PeriodQuantity quantity, int first, Instant from, Instant to)
    {
        var (sum, most, step, quality) = (0.0, double.NegativeInfinity, Duration.Zero, Quality.Direct);
        var covered = from;
        for (var i = first; i < periods.Length; i++)
        {
            var p = periods[i];
            if (p.Start > covered)
                return Reading.Unknown;
            var end = Instant.Min(p.End, to);
            var whole = p.Start >= from && p.End <= to;
            sum += whole ? p.Value : p.Value * ((end - covered) / (p.End - p.Start));
            most = Math.Max(most, p.Value);
            step = Duration.Max(step, p.End - p.Start);
            quality = Worst(quality, p.Quality, whole ? Quality.Direct : Quality.Interpolated);
            covered = end;
            if (covered >= to)
                return new Reading(quantity == PeriodQuantity.PrecipitationMm ? sum : most, quality, step);
        }

        return Reading.Unknown;
    }

    private static Quality Worst(Quality a, Quality b, Quality c) => (Quality)Math.Min((int)a, Math.Min((int)b, (int)c));

    /// <summary>Whether the gap after point <paramref name="i"/> is the feed's own step and not a hole.</summary>
    private static bool IsOneStep(ImmutableArray<InstantPoint> points, int i)
    {
        var gap = points[i + 1].At - points[i].At;
        if (gap > WidestStep)
            return false;
        var before = i > 0 ? points[i].At - points[i - 1].At : Duration.Zero;
        var after = i + 2 < points.Length ? points[i + 2].At - points[i + 1].At : Duration.Zero;
        return points.Length == 2 || gap <= Duration.Max(before, after);
    }

    /// <summary>The finer of the steps beside a point; the coarsest there is for a point that stands alone.</summary>
    private static Duration StepAt(ImmutableArray<InstantPoint> points, int i)
    {
        var before = i > 0 ? points[i].At - points[i - 1].At : WidestStep;
        var after = i + 1 < points.Length ? points[i + 1].At - points[i].At : WidestStep;
        return Duration.Min(WidestStep, Duration.Min(before, after));
    }

    private static int FirstAtOrAfter(ImmutableArray<InstantPoint> points, Instant at)
    {
        var (low, high) = (0, points.Length);
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (points[middle].At < at)
                low = middle + 1;
            else
                high = middle;
        }

        return low;
    }

    private static int FirstEndingAfter(ImmutableArray<PeriodPoint> periods, Instant at)
    {
        var (low, high) = (0, periods.Length);
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (periods[middle].End <= at)
                low = middle + 1;
            else
                high = middle;
        }

        return low;
    }
}

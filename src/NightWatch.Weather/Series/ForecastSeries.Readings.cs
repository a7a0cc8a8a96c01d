using NodaTime;

namespace NightWatch.Weather.Series;

public sealed partial class ForecastSeries
{
    /// <summary>The value at an instant: the feed's own, or on the straight line between its neighbours.</summary>
    /// <returns>Unknown before the first point, after the last, and across a gap wider than the feed's step there (at most 6 h).</returns>
    public Reading At(InstantQuantity quantity, Instant at) => throw new NotImplementedException();

    /// <summary>A period quantity over any period: amounts by overlap, gusts and probabilities by their maximum.</summary>
    /// <returns>Unknown unless the feed's periods cover the whole of <paramref name="period"/>.</returns>
    public Reading Over(PeriodQuantity quantity, Interval period) => throw new NotImplementedException();
}

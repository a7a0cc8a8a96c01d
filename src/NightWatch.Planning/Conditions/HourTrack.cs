using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Planning.Conditions;

/// <summary>
/// The forecast by the hour from now to the way home: what wets and dries the ground, and what people meet. NaN is unknown.
/// </summary>
internal sealed class HourTrack
{
    public static Duration Step { get; } = Duration.FromHours(1);

    /// <summary>A feed starts at its own hour; rain of this long before it is covered by the rain already fallen.</summary>
    private static readonly Duration LateStart = Duration.FromHours(6);

    private HourTrack(Instant start, int count)
    {
        Start = start;
        AirC = new double[count];
        DewPointC = new double[count];
        WindMps = new double[count];
        Cloud = new double[count];
        RainMmPerH = new double[count];
        VisibilityM = new double[count];
        SunAltitudeDeg = new double[count];
    }

    public Instant Start { get; }

    public double[] AirC { get; }

    public double[] DewPointC { get; }

    public double[] WindMps { get; }

    public double[] Cloud { get; }

    /// <summary>In the hour from each sample on.</summary>
    public double[] RainMmPerH { get; }

    public double[] VisibilityM { get; }

    public double[] SunAltitudeDeg { get; }

    public int Count => AirC.Length;

    /// <summary>First sample at or after an instant, clipped.</summary>
    public int IndexAt(Instant at) => Math.Clamp((int)Math.Ceiling((at - Start) / Step - 1e-9), 0, Count - 1);

    /// <summary>Reads the forecast.</summary>
    /// <param name="series">The forecast.</param>
    /// <param name="now">The clock reading.</param>
    /// <param name="end">The way home.</param>
    /// <param name="sunAltitudeDeg">Of the Sun's centre at an instant.</param>
    public static HourTrack Of(ForecastSeries series, Instant now, Instant end, Func<Instant, double> sunAltitudeDeg)
    {
        var start = now;
        if (
            series.Periods.TryGetValue(PeriodQuantity.PrecipitationMm, out var rain)
            && rain.Length > 0
            && rain[0].Start > now
            && rain[0].Start - now <= LateStart)
            start = rain[0].Start;
        start = Instant.Min(WholeHour.AtOrBefore(start), WholeHour.AtOrBefore(end));
        var track = new HourTrack(start, Math.Max(1, (int)Math.Ceiling((end - start) / Step)));
        for (var i = 0; i < track.Count; i++)
        {
            var at = start + Step * i;
            track.AirC[i] = At(series, InstantQuantity.AirTemperatureC, at);
            track.DewPointC[i] = At(series, InstantQuantity.DewPointC, at);
            track.WindMps[i] = At(series, InstantQuantity.WindMps, at);
            track.Cloud[i] = At(series, InstantQuantity.CloudAreaFraction, at);
            track.VisibilityM[i] = At(series, InstantQuantity.VisibilityM, at);
            track.RainMmPerH[i] = series.Over(PeriodQuantity.PrecipitationMm, new Interval(at, at + Step)).Value ?? double.NaN;
            track.SunAltitudeDeg[i] = sunAltitudeDeg(at);
        }

        return track;
    }

    private static double At(ForecastSeries series, InstantQuantity quantity, Instant at) => series.At(quantity, at).Value ?? double.NaN;
}

using System.Collections.Immutable;
using NodaTime;

namespace NightWatch.Weather.Series;

/// <summary>Dew point and humidity of a series: believed, refused, or derived from each other.</summary>
internal static class Moisture
{
    /// <summary>Dew point and temperature are rounded apart; up to here the excess is taken as saturation.</summary>
    private const double DewPointExcessC = 0.5;

    /// <summary>Replaces both by what can be known of them at the times of the air temperature, and as given at other times.</summary>
    public static void Complete(Dictionary<InstantQuantity, ImmutableArray<InstantPoint>> values)
    {
        var air = values.GetValueOrDefault(InstantQuantity.AirTemperatureC, []);
        if (air.IsEmpty)
            return;
        var dew = Believed(values.GetValueOrDefault(InstantQuantity.DewPointC, []), air);
        var humidity = values.GetValueOrDefault(InstantQuantity.RelativeHumidity, []);
        values[InstantQuantity.DewPointC] = With(dew, Missing(dew, air, humidity, DewPoint));
        values[InstantQuantity.RelativeHumidity] = With(humidity, Missing(humidity, air, dew, RelativeHumidity));
    }

    private static double? DewPoint(double airC, double relative) =>
        Humidity.DewPointC(airC, relative) is { } dew ? Plausible.Value(InstantQuantity.DewPointC, dew) : null;

    private static double? RelativeHumidity(double airC, double dewC) => Humidity.Relative(airC, dewC);

    private static ImmutableArray<InstantPoint> Believed(ImmutableArray<InstantPoint> dew, ImmutableArray<InstantPoint> air)
    {
        var believed = ImmutableArray.CreateBuilder<InstantPoint>(dew.Length);
        var i = 0;
        foreach (var point in dew)
        {
            var most = Find(air, point.At, ref i) ?? double.PositiveInfinity;
            if (point.Value <= most + DewPointExcessC)
                believed.Add(point with { Value = Math.Min(point.Value, most) });
        }

        return believed.DrainToImmutable();
    }

    /// <summary>Values at the times of the air temperature that are not there and can be derived.</summary>
    private static List<InstantPoint> Missing(
        ImmutableArray<InstantPoint> there,
        ImmutableArray<InstantPoint> air,
        ImmutableArray<InstantPoint> other,
        Func<double, double, double?> derive)
    {
        var missing = new List<InstantPoint>();
        var (i, j) = (0, 0);
        foreach (var a in air)
        {
            if (Find(there, a.At, ref i) is null && Find(other, a.At, ref j) is { } o && derive(a.Value, o) is { } value)
                missing.Add(new InstantPoint(a.At, value, Quality.Derived));
        }

        return missing;
    }

    private static ImmutableArray<InstantPoint> With(ImmutableArray<InstantPoint> there, List<InstantPoint> more) =>
        more.Count == 0 ? there : [.. there.Concat(more).OrderBy(p => p.At)];

    /// <summary>The value at a time, from a place on that only moves forward.</summary>
    private static double? Find(ImmutableArray<InstantPoint> points, Instant at, ref int from)
    {
        while (from < points.Length && points[from].At < at)
            from++;
        return from < points.Length && points[from].At == at ? points[from].Value : null;
    }
}

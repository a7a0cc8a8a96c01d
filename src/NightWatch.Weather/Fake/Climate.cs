using System.Collections.Frozen;

namespace NightWatch.Weather.Fake;

/// <summary>One kind of climate: a station's distributions, and how its weather persists and is forecast.</summary>
internal sealed record Climate
{
    private static readonly FrozenDictionary<ClimateKind, Lazy<Climate>> all =
        Enum.GetValues<ClimateKind>().ToFrozenDictionary(kind => kind, kind => new Lazy<Climate>(() => ClimateText.ReadShipped(kind)));

    /// <summary>Opaque cloud, fraction.</summary>
    public required StationTable Cloud { get; init; }

    /// <summary>Air temperature minus dew point, K.</summary>
    public required StationTable DepressionK { get; init; }

    /// <summary>Mean wind, m/s.</summary>
    public required StationTable WindMps { get; init; }

    /// <summary>The station's nights.</summary>
    public required StationFigures Nights { get; init; }

    /// <summary>Share of the cloud's variance (as a standard normal) that changes from day to day; the rest changes within hours.</summary>
    public required double SlowShare { get; init; }

    /// <summary>Hours between the nodes of that slow part.</summary>
    public required double SlowH { get; init; }

    /// <summary>Hours between the nodes of the air's moisture.</summary>
    public required double MoistureH { get; init; }

    /// <summary>Correlation of cloud with a small depression, both as standard normals.</summary>
    public required double CloudMoisture { get; init; }

    /// <summary>How much too cloudy the feed's nights are past the short range, fraction of the sky.</summary>
    /// <remarks>
    /// It belongs to feed and place. Humid continental: +0.15 as Open-Meteo in New York, against its own first hours. Dry desert: −0.10, as
    /// another feed against an observer at a desert place. The other two kinds: 0, since nothing was measured.
    /// </remarks>
    public required double Bias { get; init; }

    /// <summary>Of a kind.</summary>
    public static Climate Of(ClimateKind kind) => all[kind].Value;

    /// <summary>The shift of a standard normal that makes the nights' mean cloud greater by so much, fraction.</summary>
    public double ShiftFor(double cloud)
    {
        var wanted = NightMean(0) + cloud;
        var (low, high) = (-4.0, 4.0);
        for (var i = 0; i < 40; i++)
        {
            var middle = (low + high) / 2;
            if (NightMean(middle) < wanted) low = middle;
            else high = middle;
        }

        return (low + high) / 2;
    }

    private double NightMean(double shift)
    {
        var (sum, weight) = (0.0, 0.0);
        for (var score = -3.0; score <= 3; score += 0.25)
        {
            var density = Math.Exp(-score * score / 2);
            for (var month = 0; month < StationTable.Months; month++)
            {
                for (var hour = 20; hour < 20 + StationFigures.Hours; hour += 2)
                {
                    sum += density * Cloud.At(month + 0.5, hour % 24, score + shift);
                    weight += density;
                }
            }
        }

        return sum / weight;
    }
}

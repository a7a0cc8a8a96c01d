using NightWatch.Planning.Conditions;
using NightWatch.Planning.Reasons;
using NightWatch.Planning.Watches;

namespace NightWatch.Planning.Worth;

/// <summary>The shares of a frame's worth that the weather has, by cell.</summary>
/// <param name="Clear">Cloud and fog before the subject; NaN where the cloud is unknown. Unknown fog takes nothing.</param>
/// <param name="Steady">The rail in the gusts; unknown wind takes nothing.</param>
/// <param name="Dry">0 where it rains, 1 elsewhere; unknown rain takes nothing.</param>
internal sealed record WeatherWorth(double[] Clear, double[] Steady, double[] Dry)
{
    /// <summary>
    /// A gust that is only estimated from the mean wind takes no more than half, unless the mean wind alone is past the stop.
    /// </summary>
    private const double LeastByEstimate = 0.5;

    /// <summary>Of a forecast, or of the hours that came.</summary>
    public static WeatherWorth Of(WeatherTrack weather, Limits limits)
    {
        var count = weather.Cloud.Length;
        var (clear, steady, dry) = (new double[count], new double[count], new double[count]);
        for (var cell = 0; cell < count; cell++)
        {
            clear[cell] = ClearAt(weather, limits, cell);
            steady[cell] = SteadyAt(weather.GustMps[cell], weather.WindMps[cell], limits.GustMps);
            dry[cell] = weather.Rain[cell] >= limits.PrecipitationMmPerH ? 0 : 1;
        }

        return new WeatherWorth(clear, steady, dry);
    }

    /// <summary>All three with the dark share. A moment that something known makes worthless is worthless, whatever is unknown.</summary>
    public double[] Under(double[] dark)
    {
        var worth = new double[Clear.Length];
        for (var cell = 0; cell < worth.Length; cell++)
        {
            var known = Steady[cell] * Dry[cell] * dark[cell];
            worth[cell] = known == 0 ? 0 : known * Clear[cell];
        }

        return worth;
    }

    private static double ClearAt(WeatherTrack weather, Limits limits, int cell)
    {
        var cloud = Share.Between(weather.Cloud[cell], limits.Cloud.Caution, limits.Cloud.Stop);
        var fog = Share.Between(FogJudge.Told(weather, cell, limits.FogVisibilityM), limits.Fog.Caution, limits.Fog.Stop);
        return double.IsNaN(fog) ? cloud : fog == 0 ? 0 : fog * cloud;
    }

    private static double SteadyAt(double gustMps, double windMps, Threshold limits)
    {
        if (!double.IsNaN(gustMps)) return Share.Between(gustMps, limits.Caution, limits.Stop);
        if (double.IsNaN(windMps)) return 1;
        if (windMps >= limits.Stop) return 0;
        return Math.Max(LeastByEstimate, Share.Between(windMps * WindJudge.InlandGustFactor, limits.Caution, limits.Stop));
    }
}

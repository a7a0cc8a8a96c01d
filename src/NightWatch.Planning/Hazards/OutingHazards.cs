using NightWatch.Planning.Conditions;
using NightWatch.Planning.Dew;
using NightWatch.Planning.Ground;
using NightWatch.Planning.Watches;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Planning.Hazards;

/// <summary>What people meet from leaving home to being back.</summary>
internal static class OutingHazards
{
    /// <param name="outing">Leaving home to the end of the drive home.</param>
    /// <param name="drive">One way.</param>
    /// <param name="series">The forecast; null: unknown weather, which is said.</param>
    /// <param name="hours">The same by the hour; null with it.</param>
    /// <param name="ground">Wet ground means wet roads.</param>
    /// <param name="limits">The watch's limits for thunder.</param>
    /// <param name="hoursAwake">At the end of the drive home.</param>
    public static IReadOnlyList<Caution> Of(
        Interval outing, Duration drive, ForecastSeries? series, HourTrack? hours, GroundPlan ground, Limits limits, double hoursAwake)
    {
        var exposure = new NightExposure
        {
            ThunderCare = limits.Thunder.Caution,
            ThunderStop = limits.Thunder.Stop,
            HoursAwake = hoursAwake,
        };
        return FieldHazards.Of(series is null || hours is null ? exposure : Exposed(exposure, outing, drive, series, hours, ground));
    }

    private static NightExposure Exposed(
        NightExposure exposure, Interval outing, Duration drive, ForecastSeries series, HourTrack hours, GroundPlan ground)
    {
        double? rain = null, chill = null, frostbite = null, coldest = null, heat = null, visibility = null;
        RoadIceRisk? ice = null;
        for (var i = hours.IndexAt(outing.Start); i <= hours.IndexAt(outing.End); i++)
        {
            var at = hours.Start + HourTrack.Step * i;
            var (air, wind) = (hours.AirC[i], hours.WindMps[i]);
            rain = Most(rain, hours.RainMmPerH[i]);
            coldest = Least(coldest, air);
            if (!double.IsNaN(air) && !double.IsNaN(wind))
            {
                chill = Least(chill, WindChill.Celsius(air, wind));
                frostbite = Least(frostbite, WindChill.FrostbiteMinutes(air, wind) ?? double.NaN);
            }

            if (!double.IsNaN(air) && !double.IsNaN(hours.DewPointC[i]))
                heat = Most(heat, HeatIndex.Celsius(air, DewPoint.Humidity(air, hours.DewPointC[i])));
            if (at > outing.Start + drive && at < outing.End - drive) continue;
            visibility = Least(visibility, hours.VisibilityM[i]);
            var wet = hours.RainMmPerH[i] > 0 || ground.AtStart is GroundState.Damp or GroundState.Wet;
            if (RoadIce.At(air, hours.DewPointC[i], hours.Cloud[i], wet) is { } risk && !(risk <= ice)) ice = risk;
        }

        return exposure with
        {
            ThunderProbability = series.Over(PeriodQuantity.ThunderProbability, outing).Value,
            MostGustMps = series.Over(PeriodQuantity.GustMps, outing).Value,
            HeaviestRainMmPerH = rain,
            LeastWindChillC = chill,
            FrostbiteMinutes = frostbite,
            LeastAirC = coldest,
            MostHeatIndexC = heat,
            LeastDriveVisibilityM = visibility,
            RoadIce = ice,
        };
    }

    private static double? Most(double? most, double value) => double.IsNaN(value) || value <= most ? most : value;

    private static double? Least(double? least, double value) => double.IsNaN(value) || value >= least ? least : value;
}

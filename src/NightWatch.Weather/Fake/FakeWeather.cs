using NightWatch.Weather.Feeds;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Weather.Fake;

/// <summary>
/// Weather made from a seed: the same for the same seed, kind of climate, place and instant, everywhere and at any time. Cloud, moisture
/// and wind are distributed by month and time of day as at the kind's station; each is a standard normal that wanders from day to day and
/// hour to hour, put through the station's quantiles. Temperatures go by latitude and season.
/// </summary>
/// <remarks>
/// <para>
/// Persistence is fitted to the stations' nights (<see cref="StationFigures"/>). Over distance the slow part of the cloud loses its
/// likeness within some 600 km and the fast part within some 50 km: daily cloudiness decorrelates over hundreds of kilometres (Long and
/// Ackerman 1995, J. Appl. Meteorol. 34, 1039), hourly irradiance over tens (Perez, Kivalov, Schlemmer, Hemker and Hoff 2012, Solar Energy
/// 86, 2170). Both are cited from memory, and the distances are unproven here. Nothing travels: places downwind do not have the same later.
/// </para>
/// <para>Rain, thunder, layers and temperatures are drawn by hand and are no source of figures.</para>
/// </remarks>
public sealed class FakeWeather
{
    /// <summary>Distance over which the slow part of the cloud changes.</summary>
    internal const double SlowKm = 600;

    /// <summary>Distance over which the fast part changes.</summary>
    internal const double FastKm = 50;

    private const double FastH = 5;
    private const double LapseCPerM = 0.0065;
    private const double HoursPerYear = 8765.82;

    private readonly Climate climate;
    private readonly double shortShift;
    private readonly double longShift;
    private readonly NoiseField slow;
    private readonly NoiseField slowError;
    private readonly NoiseField slowOwn;
    private readonly NoiseField fast;
    private readonly NoiseField fastError;
    private readonly NoiseField moisture;
    private readonly NoiseField moistureError;
    private readonly NoiseField breeze;
    private readonly NoiseField breezeError;
    private readonly NoiseField wet;
    private readonly NoiseField wetError;
    private readonly NoiseField airMass;
    private readonly NoiseField heights;

    /// <param name="seed">Another seed, another world.</param>
    /// <param name="kind">Of climate, everywhere in this world.</param>
    public FakeWeather(long seed, ClimateKind kind = ClimateKinds.Default)
        : this(seed, Climate.Of(kind))
    {
    }

    internal FakeWeather(long seed, Climate climate)
    {
        this.climate = climate;
        shortShift = climate.ShiftFor(ForecastError.ShortRangeBias * climate.Bias);
        longShift = climate.ShiftFor(climate.Bias);
        var root = Chance.Mix(0x5EED, seed);
        slow = Field(1, SlowKm, climate.SlowH);
        slowError = Field(2, SlowKm / 2, climate.SlowH);
        slowOwn = Field(3, SlowKm / 2, climate.SlowH);
        fast = Field(4, FastKm, FastH);
        fastError = Field(5, FastKm, FastH);
        moisture = Field(6, SlowKm, climate.MoistureH);
        moistureError = Field(7, SlowKm / 2, climate.MoistureH);
        breeze = Field(8, 200, 9);
        breezeError = Field(9, 200, 9);
        wet = Field(10, 100, 5);
        wetError = Field(11, 100, 5);
        airMass = Field(12, 1200, 70);
        heights = Field(13, 300, 12);

        NoiseField Field(long number, double lengthKm, double spacingH) => new(Chance.Mix(root, number), lengthKm, spacingH);
    }

    /// <summary>The weather as it is.</summary>
    public WeatherState At(ForecastPlace place, Instant at) => See(Spot.Of(place), Hours(at), default);

    /// <summary>The weather as a run sees it. Up to the issue time it is the truth; the error grows from there.</summary>
    /// <param name="place">The place.</param>
    /// <param name="at">Valid time.</param>
    /// <param name="issuedAt">When the run was issued.</param>
    /// <param name="member">0 for the run itself, 1 and up for members of its ensemble.</param>
    public WeatherState Forecast(ForecastPlace place, Instant at, Instant issuedAt, int member = 0) =>
        See(Spot.Of(place), Hours(at), new ForecastError(Math.Max(0, Hours(at) - Hours(issuedAt)), Hours(issuedAt), member));

    private static double Hours(Instant at) => (at - NodaConstants.UnixEpoch).TotalHours;

    private WeatherState See(Spot spot, double hours, ForecastError error)
    {
        var (unit, sun) = (spot.Unit, SunClock.At(spot, hours));
        var month = 12 * (hours / HoursPerYear - Math.Floor(hours / HoursPerYear)) + (spot.LatitudeDeg < 0 ? 6 : 0);

        var drift = error.Slow(slow.At(unit, hours), slowError, slowOwn, unit, hours);
        var flicker = error.Fast(fast.At(unit, hours), fastError, unit, hours);
        var cover = Mixed(drift, flicker, climate.SlowShare);
        var damp = Mixed(
            cover, error.Slow(moisture.At(unit, hours), moistureError, null, unit, hours), climate.CloudMoisture * climate.CloudMoisture);
        var wind = climate.WindMps.At(
            month, sun.SolarHour, Mixed(drift, error.Fast(breeze.At(unit, hours), breezeError, unit, hours), 0.15));
        var wetness = error.Fast(wet.At(unit, hours), wetError, unit, hours);
        var mass = airMass.At(unit, hours);

        var cloud = climate.Cloud.At(month, sun.SolarHour, cover + Shift(error));
        var margin = climate.DepressionK.At(month, sun.SolarHour, -damp);
        var dayMean = sun.MeanC - LapseCPerM * spot.ElevationM + 2.5 * mass;
        var dew = dayMean - climate.DepressionK.Median(month);

        var height = heights.At(unit, hours);
        var (lowShare, highShare) = (Shape.Step(-0.4, 0.6, -height), Shape.Step(0.6, 1.6, height));
        // Whoever stands in fog sees no star: the station's cloud holds it already.
        var fog = cloud * Shape.Step(1.0, 0.3, margin) * Shape.Step(3.2, 1.6, wind) * (1 - sun.Day);
        var lowCloud = Math.Max(fog, Layer(cloud, lowShare));

        var warm = Shape.Step(14, 24, dayMean) * Shape.Step(11, 15, sun.SolarHour) * (1 - Shape.Step(20, 24, sun.SolarHour));
        var cell = warm * Shape.Step(0.3, 0.8, cloud) * Shape.Step(1.2, 2.0, wetness);
        var rain = Shape.Step(0.7, 0.97, cloud) * 2 * Math.Max(0, Mixed(cover, wetness, 0.4) - 1.2) + 6 * cell;
        rain = rain < 0.05 ? 0 : rain;

        var from = 265 + 40 * mass + 25 * drift;
        return new WeatherState
        {
            Cloud = cloud,
            LowCloud = lowCloud,
            MediumCloud = Layer(cloud, Math.Max(0, 1 - lowShare - highShare)),
            HighCloud = Layer(cloud, highShare),
            Fog = fog,
            AirC = dew + margin,
            DewPointC = dew,
            RelativeHumidity = Humidity.Relative(dew + margin, dew),
            WindMps = wind,
            GustMps = wind * 1.45 + 1 + 9 * cell,
            WindFromDeg = Compass.Normal(spot.LatitudeDeg < 0 ? 540 - from : from),
            RainMmPerH = rain,
            RainProbability = RainProbability(rain, lowCloud, error.LeadH),
            ThunderProbability = Math.Min(0.9, 0.8 * cell),
            PressureHpa = 1016 - 7 * drift + 2.5 * mass,
            VisibilityM = fog > 0.3 ? 900 - 800 * fog : 1500 + 40_000 * Shape.Step(0.2, 5, margin) / (1 + 3 * rain),
        };
    }

    private double Shift(ForecastError error) =>
        error.LeadH > ForecastError.SwitchH ? longShift : shortShift * error.BiasShare / ForecastError.ShortRangeBias;

    /// <summary>A standard normal of two, the first with so much of the variance.</summary>
    private static double Mixed(double a, double b, double shareOfA) => Math.Sqrt(shareOfA) * a + Math.Sqrt(1 - shareOfA) * b;

    /// <summary>A layer that has so much of the cloud's thickness; layers that overlap at random make up the whole cloud.</summary>
    private static double Layer(double cloud, double share) => share <= 0 ? 0 : Math.Min(cloud, 1 - Math.Pow(1 - cloud, share));

    private static double RainProbability(double rain, double lowCloud, double leadH)
    {
        var sure = Math.Exp(-leadH / 90);
        var said = 1 - Math.Exp(-rain / 0.2);
        return leadH <= 0 ? (rain > 0 ? 1 : 0) : sure * said + (1 - sure) * (0.04 + 0.3 * lowCloud);
    }
}

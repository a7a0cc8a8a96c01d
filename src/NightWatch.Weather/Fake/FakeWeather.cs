using NightWatch.Weather.Feeds;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Weather.Fake;

/// <summary>
/// Weather made from a seed: the same for the same seed, place and instant, everywhere and at any time. Fronts cross eastward with
/// their cloud, rain and wind; between them lie clear spells with patches of cloud; clear calm nights cool toward the dew point.
/// </summary>
/// <remarks>A stand-in for a rehearsal and for tests, drawn after textbook fronts. It is nobody's climate and no source of figures.</remarks>
public sealed class FakeWeather
{
    private const double PatchDriftDegPerH = 0.35;
    private const double PatchMemoryH = 120;
    private const double LapseCPerM = 0.0065;

    private readonly Fronts fronts;
    private readonly GaussianField lowPatches;
    private readonly GaussianField highPatches;
    private readonly GaussianField patchError;
    private readonly GaussianField highError;
    private readonly GaussianField airMass;
    private readonly GaussianField moisture;
    private readonly GaussianField moistureError;
    private readonly GaussianField breeze;
    private readonly GaussianField storms;

    /// <param name="seed">Another seed, another world.</param>
    public FakeWeather(long seed)
    {
        var root = Chance.Mix(0x5EED, seed);
        fronts = new Fronts(Chance.Mix(root, 1));
        lowPatches = new GaussianField(Chance.Mix(root, 2), 350, 14);
        highPatches = new GaussianField(Chance.Mix(root, 3), 500, 16);
        patchError = new GaussianField(Chance.Mix(root, 4), 350, 14, 30);
        highError = new GaussianField(Chance.Mix(root, 5), 500, 16, 30);
        airMass = new GaussianField(Chance.Mix(root, 6), 1200, 70);
        moisture = new GaussianField(Chance.Mix(root, 7), 500, 40);
        moistureError = new GaussianField(Chance.Mix(root, 8), 500, 40, 36);
        breeze = new GaussianField(Chance.Mix(root, 9), 200, 9);
        storms = new GaussianField(Chance.Mix(root, 10), 150, 5);
    }

    /// <summary>The weather as it is.</summary>
    public WeatherState At(ForecastPlace place, Instant at) => See(Spot.Of(place), Hours(at), ForecastView.Truth);

    /// <summary>The weather as a run sees it. Up to the issue time it is the truth; the error grows from there.</summary>
    /// <param name="place">Where.</param>
    /// <param name="at">Valid time.</param>
    /// <param name="issuedAt">When the run was issued.</param>
    /// <param name="member">0 for the run itself, 1 and up for members of its ensemble.</param>
    public WeatherState Forecast(ForecastPlace place, Instant at, Instant issuedAt, int member = 0) =>
        See(Spot.Of(place), Hours(at), new ForecastView(Hours(issuedAt), member));

    private static double Hours(Instant at) => (at - NodaConstants.UnixEpoch).TotalHours;

    private WeatherState See(Spot spot, double hours, ForecastView view)
    {
        var error = view.ErrorAt(hours);
        Span<FrontHere> near = stackalloc FrontHere[4];
        fronts.Near(spot, hours, view, near);
        var front = FrontWeather.Of(near, spot.LatitudeDeg < 0);
        var sun = SunClock.At(spot, hours);
        var source = spot.Upwind(PatchDriftDegPerH * hours);

        var low = error.Blur(lowPatches.At(source, hours), patchError, spot.Unit, hours, PatchMemoryH);
        var high = error.Blur(highPatches.At(source, hours), highError, spot.Unit, hours, PatchMemoryH);
        var wet = error.Blur(moisture.At(spot.Unit, hours), moistureError, spot.Unit, hours, 2 * PatchMemoryH);
        var dryBelt = Shape.Hump(12, 20, 30, 38, Math.Abs(spot.LatitudeDeg));

        var cumulus = front.Showers * (0.25 + 0.55 * sun.Day) * Shape.Step(-1, 1.2, low);
        var lowCloud = Together(front.Low, Shape.Step(0.75 + 0.5 * dryBelt, 1.5 + 0.5 * dryBelt, low), cumulus);
        var highCloud = Together(front.High, 0.75 * Shape.Step(0.9, 2.0, high));
        var cloud = Together(lowCloud, front.Medium, highCloud);

        var calm = 1.1 + 0.75 * breeze.At(spot.Unit, hours);
        var wind = Math.Max(0.2, (1.6 + calm) * (0.65 + 0.45 * sun.Day) + 7 * front.Wind + 0.0006 * spot.ElevationM);
        var mixing = 1 / (1 + wind * wind / 40);

        var dayMean = sun.MeanC - LapseCPerM * spot.ElevationM + 2.5 * airMass.At(spot.Unit, hours) + front.WarmthC;
        var swing = sun.SwingC * (1 - 0.7 * front.Veil) * (0.45 + 0.55 * mixing);
        var depression = Math.Max(0.6, 4.5 + 6 * dryBelt - 2.0 * wet - 3.5 * front.Veil - 2 * front.Showers);
        var free = dayMean + swing * sun.Warming;
        var dew = dayMean - depression - 0.3 * Math.Max(0, dayMean - depression - free);
        var air = dew + 0.05 + Shape.Ramp(free - dew, 0.7);
        var margin = air - dew;
        var fog = Shape.Step(1.0, 0.35, margin) * Shape.Step(3.2, 1.6, wind) * (1 - sun.Day) * (1 - 0.8 * front.Veil) * Shape.Step(0.4, 1.4, wet);

        var warm = Shape.Step(14, 24, dayMean) * Shape.Step(11, 15, sun.SolarHour) * (1 - Shape.Step(20, 24, sun.SolarHour));
        var cell = warm * (1 - dryBelt) * Shape.Step(1.2, 2.0, error.Blur(storms.At(source, hours), patchError, source, hours, 30));
        var thunder = Math.Min(0.9, 0.8 * cell + 0.5 * front.Rain * Shape.Step(12, 22, dayMean));
        var rain = front.Rain * 2.4 + 6 * cell + (front.Showers > 0.25 && low > 1.3 ? 0.8 * front.Showers : 0);
        rain = rain < 0.05 ? 0 : rain;

        return new WeatherState
        {
            Cloud = Math.Max(Math.Max(cloud, cell), fog), // who stands in fog sees no star
            LowCloud = Math.Max(Math.Max(lowCloud, 0.8 * cell), fog),
            MediumCloud = front.Medium,
            HighCloud = highCloud,
            Fog = fog,
            AirC = air,
            DewPointC = dew,
            RelativeHumidity = Humidity.Relative(air, dew),
            WindMps = wind,
            GustMps = wind * 1.45 + 1 + 3 * front.Wind + 9 * cell,
            WindFromDeg = Compass.Normal(front.WindFromDeg + 35 * airMass.At(spot.Unit, hours)),
            RainMmPerH = rain,
            RainProbability = RainProbability(rain, lowCloud, error.LeadH),
            ThunderProbability = thunder,
            PressureHpa = front.PressureHpa + 2.5 * airMass.At(spot.Unit, hours),
            VisibilityM = fog > 0.3 ? 900 - 800 * fog : 1500 + 40_000 * Shape.Step(0.2, 5, margin) / (1 + 3 * rain),
        };
    }

    /// <summary>Layers that overlap at random.</summary>
    private static double Together(double a, double b, double c = 0) => 1 - (1 - a) * (1 - b) * (1 - c);

    private static double RainProbability(double rain, double lowCloud, double leadH)
    {
        var sure = Math.Exp(-leadH / 90);
        var said = 1 - Math.Exp(-rain / 0.2);
        return leadH <= 0 ? (rain > 0 ? 1 : 0) : sure * said + (1 - sure) * (0.04 + 0.3 * lowCloud);
    }
}

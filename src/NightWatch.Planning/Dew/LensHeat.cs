namespace NightWatch.Planning.Dew;

/// <summary>
/// Heat balance of a front element under the night sky: one lump of glass that radiates, is fanned by wind and may be heated.
/// </summary>
/// <remarks>
/// C dT/dt = A {e σ [F ε Ta⁴ + (1 − F) Ta⁴ − T⁴] + h (Ta − T)} + P, standard heat transfer. The sky's ε is Berdahl and Martin's under
/// Unsworth and Monteith's cloud; h = 2.8 + 3.0 V W/(m² K) is Watmuff, Charters and Proctor 1977 for V m/s at the surface. Condensation
/// heat is left out: it slows the cooling after the onset, not before.
/// </remarks>
public static class LensHeat
{
    private const double StefanBoltzmann = 5.670374e-8; // W/(m² K⁴), CODATA 2018
    // Long-wave, glass without a coating (European Commission, project MTR102, "Emissivity of glass").
    private const double GlassEmissivity = 0.9;
    private const double KelvinAtZeroC = 273.15;

    /// <summary>Steps the element's temperature along the night. Values between samples are taken as straight lines.</summary>
    /// <param name="element">The lens.</param>
    /// <param name="air">The air around it; a step of 300 s or less keeps the error below 0.02 K.</param>
    /// <param name="startC">Temperature at the first sample, °C: the car's or the bag's. NaN: the air's.</param>
    /// <param name="heaterW">Power of the heater while it is on, W; its coupling is the element's.</param>
    /// <param name="heaterFrom">First sample from which the heater is on.</param>
    /// <param name="elementC">Out: temperature of the element at each sample, °C.</param>
    /// <remarks>
    /// NaN in any input is unknown and gives NaN; where the inputs come back the element is taken at its resting temperature, the
    /// coldest it can have become.
    /// </remarks>
    /// <exception cref="ArgumentException">The element's span is not as long as the air's.</exception>
    public static void Follow(
        in FrontElement element, in NightAir air, double startC, double heaterW, int heaterFrom, Span<double> elementC)
    {
        if (elementC.Length != air.Count) throw new ArgumentException("All series of the night must have one length.", nameof(elementC));
        if (air.Count == 0) return;

        var heat = heaterW * element.HeaterCoupling;
        elementC[0] = double.IsNaN(startC) ? air.AirC[0] : startC;
        var before = SurroundingsAt(element, air, 0);
        if (!before.IsKnown) elementC[0] = double.NaN;
        for (var i = 1; i < air.Count; i++)
        {
            var after = SurroundingsAt(element, air, i);
            if (!after.IsKnown)
                elementC[i] = double.NaN;
            else if (double.IsNaN(elementC[i - 1]))
                elementC[i] = RestingC(element, air.AirC[i], air.DewPointC[i], air.Cloud[i], air.WindMps[i], i >= heaterFrom ? heaterW : 0);
            else
                elementC[i] = Advance(element, Surroundings.Between(before, after), elementC[i - 1], i > heaterFrom ? heat : 0, air.StepS);
            before = after;
        }
    }

    /// <summary>Temperature, °C, at which the element would rest if nothing changed.</summary>
    public static double RestingC(
        in FrontElement element, double airC, double dewPointC, double cloud, double windMps, double heaterW = 0)
    {
        var around = new Surroundings(element, airC, dewPointC, cloud, windMps);
        var temperature = airC;
        for (var i = 0; i < 4; i++) // Newton; the third step already moves less than a microkelvin
            temperature -= Gain(element, around, temperature, heaterW * element.HeaterCoupling) / Slope(element, around, temperature);
        return temperature;
    }

    /// <summary>
    /// Heater power, W, that holds the element at a temperature while nothing else changes; 0 where it stays warmer by itself.
    /// </summary>
    public static double PowerToHoldW(
        in FrontElement element, double elementC, double airC, double dewPointC, double cloud, double windMps)
    {
        var around = new Surroundings(element, airC, dewPointC, cloud, windMps);
        var loss = -Gain(element, around, elementC, 0);
        return double.IsNaN(loss) ? double.NaN : Math.Max(0, loss / element.HeaterCoupling);
    }

    /// <summary>Time constant of the element, seconds, about a temperature.</summary>
    public static double TimeConstantS(in FrontElement element, double airC, double windMps)
    {
        var around = new Surroundings(element, airC, airC, 0, windMps);
        return -element.HeatCapacityJPerK / Slope(element, around, airC);
    }

    private static Surroundings SurroundingsAt(in FrontElement element, in NightAir air, int i) =>
        new(element, air.AirC[i], air.DewPointC[i], air.Cloud[i], air.WindMps[i]);

    // One exponential step on the balance made straight about the present temperature: exact for the linear part, second order for the
    // rest.
    private static double Advance(in FrontElement element, in Surroundings around, double temperatureC, double heatW, double stepS)
    {
        var slope = Slope(element, around, temperatureC);
        var growth = Math.Exp(slope * stepS / element.HeatCapacityJPerK) - 1;
        return temperatureC + Gain(element, around, temperatureC, heatW) / slope * growth;
    }

    private static double Gain(in FrontElement element, in Surroundings around, double temperatureC, double heatW)
    {
        var kelvin = temperatureC + KelvinAtZeroC;
        var emitted = GlassEmissivity * StefanBoltzmann * kelvin * kelvin * kelvin * kelvin;
        return element.AreaM2 * (around.RadiationWPerM2 - emitted + around.ConvectionWPerM2K * (around.AirC - temperatureC)) + heatW;
    }

    private static double Slope(in FrontElement element, in Surroundings around, double temperatureC)
    {
        var kelvin = temperatureC + KelvinAtZeroC;
        return -element.AreaM2 * (4 * GlassEmissivity * StefanBoltzmann * kelvin * kelvin * kelvin + around.ConvectionWPerM2K);
    }

    private readonly record struct Surroundings(double AirC, double RadiationWPerM2, double ConvectionWPerM2K)
    {
        public Surroundings(in FrontElement element, double airC, double dewPointC, double cloud, double windMps)
            : this(airC, Received(element, airC, dewPointC, cloud), 2.8 + 3.0 * element.WindShare * Math.Max(0, windMps))
        {
        }

        public bool IsKnown => !double.IsNaN(AirC + RadiationWPerM2 + ConvectionWPerM2K);

        public static Surroundings Between(in Surroundings a, in Surroundings b) => new(
            (a.AirC + b.AirC) / 2,
            (a.RadiationWPerM2 + b.RadiationWPerM2) / 2,
            (a.ConvectionWPerM2K + b.ConvectionWPerM2K) / 2);

        private static double Received(in FrontElement element, double airC, double dewPointC, double cloud)
        {
            var kelvin = airC + KelvinAtZeroC;
            var sky = SkyEmissivity.UnderCloud(SkyEmissivity.Clear(Math.Min(dewPointC, airC)), cloud);
            var seen = element.SkyView * sky + 1 - element.SkyView;
            return GlassEmissivity * StefanBoltzmann * seen * kelvin * kelvin * kelvin * kelvin;
        }
    }
}

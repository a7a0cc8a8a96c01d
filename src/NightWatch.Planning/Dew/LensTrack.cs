using NightWatch.Planning.Conditions;
using NightWatch.Planning.Grid;
using NightWatch.Planning.Watches;
using NodaTime;

namespace NightWatch.Planning.Dew;

/// <summary>The front element through the night on the grid, from the moment it is out of the bag.</summary>
internal sealed class LensTrack
{
    /// <summary>Unheated element, °C; NaN before it is out and where an input is unknown.</summary>
    public required double[] ElementC { get; init; }

    /// <summary>Its margin above the dew or frost point, K; NaN likewise.</summary>
    public required double[] MarginK { get; init; }

    /// <summary>The same with the kit's heater on in time; NaN likewise, and throughout without a heater.</summary>
    public required double[] HeatedMarginK { get; init; }

    /// <summary>From <see cref="OutAt"/> to the end of the run.</summary>
    public required LensDewOutcome Outcome { get; init; }

    /// <summary>First sample.</summary>
    public required Instant OutAt { get; init; }

    /// <summary>When dew or frost settles on the unheated element; null: not by the end of the run.</summary>
    public Instant? Onset => After(Outcome.OnsetS);

    /// <summary>When the heater must be on; null: no need.</summary>
    public Instant? HeaterOn => After(Outcome.SwitchOnS);

    /// <summary>When it settles in spite of the kit's heater; null: it stays clear.</summary>
    public Instant? HeatedOnset => After(Outcome.HeatedOnsetS);

    /// <summary>Follows the element.</summary>
    /// <param name="grid">The grid.</param>
    /// <param name="weather">Air, dew point, cloud, wind.</param>
    /// <param name="kit">Element and heater.</param>
    /// <param name="marginK">Wished distance from the dew point, K.</param>
    /// <param name="out">From when it faces the sky to the end of the run.</param>
    /// <param name="dryBy">When the heater must have dried an element that was wet at once: the first frame.</param>
    /// <param name="axisAltitudeDeg">Altitude of the optical axis: how much sky it faces.</param>
    public static LensTrack Along(
        NightGrid grid, WeatherTrack weather, Kit kit, double marginK, Interval @out, Instant dryBy, double axisAltitudeDeg)
    {
        var element = new FrontElement(kit.FrontElementMm, kit.FrontElementKg) { SkyView = FrontElement.SkyViewAt(axisAltitudeDeg) };
        var elementC = new double[grid.Count];
        var margins = new double[grid.Count];
        var heated = new double[grid.Count];
        Array.Fill(elementC, double.NaN);
        Array.Fill(margins, double.NaN);
        Array.Fill(heated, double.NaN);
        var (first, last) = grid.Cells(@out);
        if (last < first)
            return new LensTrack
            {
                ElementC = elementC,
                MarginK = margins,
                HeatedMarginK = heated,
                Outcome = default,
                OutAt = grid.At(first),
            };

        var cells = new Range(first, last + 1);
        var air = new NightAir(
            NightGrid.Step.TotalSeconds,
            weather.AirC.AsSpan(cells),
            weather.DewPointC.AsSpan(cells),
            weather.Cloud.AsSpan(cells),
            weather.WindMps.AsSpan(cells));
        var into = new LensSamples
        {
            ElementC = elementC.AsSpan(cells),
            MarginsK = margins.AsSpan(cells),
            HeatedMarginsK = kit.DewHeaterW > 0 ? heated.AsSpan(cells) : default,
        };
        var wish = new LensWish(StartC: double.NaN, kit.DewHeaterW, marginK) { DryByS = (dryBy - grid.At(first)).TotalSeconds };
        var outcome = LensDew.Along(element, air, wish, into);
        return new LensTrack { ElementC = elementC, MarginK = margins, HeatedMarginK = heated, Outcome = outcome, OutAt = grid.At(first) };
    }

    private Instant? After(double? seconds) => seconds is { } s ? OutAt + Duration.FromSeconds(s) : null;
}

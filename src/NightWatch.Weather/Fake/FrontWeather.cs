namespace NightWatch.Weather.Fake;

/// <summary>What the fronts near a place do to its weather: the sequence of a textbook cold front, high cloud first.</summary>
internal readonly record struct FrontWeather
{
    /// <summary>High cloud, fraction.</summary>
    public required double High { get; init; }

    /// <summary>Medium cloud, fraction.</summary>
    public required double Medium { get; init; }

    /// <summary>Low cloud, fraction.</summary>
    public required double Low { get; init; }

    /// <summary>Rain of the front itself, 0 to about 1.</summary>
    public required double Rain { get; init; }

    /// <summary>Shower air behind it, 0 to about 1.</summary>
    public required double Showers { get; init; }

    /// <summary>Wind at its passage, 0 to about 1.</summary>
    public required double Wind { get; init; }

    /// <summary>How much of the Sun and of the night sky's cold it keeps out, 0 to 1.</summary>
    public required double Veil { get; init; }

    /// <summary>Warm air ahead, cold behind, K.</summary>
    public required double WarmthC { get; init; }

    /// <summary>At sea level.</summary>
    public required double PressureHpa { get; init; }

    /// <summary>Veers as it passes (backs in the south).</summary>
    public required double WindFromDeg { get; init; }

    /// <summary>Of the fronts before and after an hour.</summary>
    public static FrontWeather Of(ReadOnlySpan<FrontHere> fronts, bool southern)
    {
        var (high, medium, low, rain, showers, wind, warmth, pressure, turn) = (1.0, 1.0, 1.0, 0.0, 0.0, 0.0, 0.0, 1021.0, 0.0);
        foreach (var (s, x) in fronts)
        {
            var body = Shape.Step(0.05, 0.5, s);
            high *= 1 - 0.95 * body * Shape.Hump(-22, -12, -1, 3, x);
            medium *= 1 - 0.95 * body * Shape.Hump(-13, -7, 0, 4, x);
            low *= 1 - 0.98 * body * Shape.Hump(-7, -3, 2, 7, x);
            rain += s * Shape.Step(0.15, 0.5, s) * Shape.Hump(-5, -2, 0.5, 2.5, x);
            showers += s * Shape.Hump(2, 5, 9, 18, x);
            wind += s * Shape.Hump(-9, -1, 1, 12, x);
            warmth += s * (3 * Shape.Hump(-24, -8, -2, 1, x) - 3.5 * Shape.Hump(-1, 3, 12, 44, x));
            pressure += s * (-19 * Math.Exp(-x * x / 260) + 5 * Shape.Hump(4, 22, 30, 48, x));
            turn += Math.Clamp(s * 1.4, 0, 1) * Shape.Hump(-20, -10, 10, 30, x) * Math.Tanh(x / 2);
        }

        var direction = 265 + 45 * Math.Clamp(turn, -1, 1);
        return new FrontWeather
        {
            High = 1 - high,
            Medium = 1 - medium,
            Low = 1 - low,
            Rain = rain,
            Showers = showers,
            Wind = wind,
            Veil = 1 - medium * low,
            WarmthC = warmth,
            PressureHpa = pressure,
            WindFromDeg = southern ? 540 - direction : direction,
        };
    }
}

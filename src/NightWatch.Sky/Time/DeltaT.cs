namespace NightWatch.Sky.Time;

/// <summary>TT − UT1 for the years before leap seconds.</summary>
/// <remarks>
/// Polynomials of Espenak and Meeus, Five Millennium Canon of Solar Eclipses (NASA TP-2006-214141). From 1972 on NightWatch takes
/// UT1 = UTC and the leap seconds instead: their later branch, a prediction of 2006, is several seconds too large by now.
/// </remarks>
public static class DeltaT
{
    /// <summary>TT − UT1, seconds.</summary>
    /// <param name="year">Calendar year with its fraction, 1900 to 2005.</param>
    public static double Seconds(double year) => year switch
    {
        < 1920 => Polynomial(year - 1900, -2.79, 1.494119, -0.0598939, 0.0061966, -0.000197),
        < 1941 => Polynomial(year - 1920, 21.20, 0.84493, -0.076100, 0.0020936),
        < 1961 => Polynomial(year - 1950, 29.07, 0.407, -1.0 / 233, 1.0 / 2547),
        < 1986 => Polynomial(year - 1975, 45.45, 1.067, -1.0 / 260, -1.0 / 718),
        _ => Polynomial(year - 2000, 63.86, 0.3345, -0.060374, 0.0017275, 0.000651814, 0.00002373599),
    };

    private static double Polynomial(double t, params ReadOnlySpan<double> coefficients)
    {
        var sum = 0.0;
        for (var i = coefficients.Length - 1; i >= 0; i--) sum = sum * t + coefficients[i];
        return sum;
    }
}

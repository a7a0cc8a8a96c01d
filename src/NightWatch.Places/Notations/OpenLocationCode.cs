namespace NightWatch.Places.Notations;

/// <summary>The box that a code names.</summary>
/// <param name="SouthDeg">Lower latitude.</param>
/// <param name="WestDeg">Lower longitude.</param>
/// <param name="NorthDeg">Upper latitude.</param>
/// <param name="EastDeg">Upper longitude.</param>
public readonly record struct CodeArea(double SouthDeg, double WestDeg, double NorthDeg, double EastDeg)
{
    /// <summary>Middle, degrees north; at most 90.</summary>
    public double LatitudeDeg => Math.Min(90, (SouthDeg + NorthDeg) / 2);

    /// <summary>Middle, degrees east.</summary>
    public double LongitudeDeg => (WestDeg + EastDeg) / 2;
}

/// <summary>Open Location Codes: a place as ten or so letters and digits, for where there are no street addresses.</summary>
/// <remarks>Open Location Code specification, version 1.0 (Google, 2019): five pairs of base-20 digits, then a grid of 4 by 5.</remarks>
public static class OpenLocationCode
{
    private const string Digits = "23456789CFGHJMPQRVWX";
    private const int SeparatorAt = 8;
    private const int PairDigits = 10;
    private const int MostDigits = 15;

    // Whole numbers keep every digit exact: the finest cell is 1 / 25,000,000 degree high and 1 / 8,192,000 wide.
    private const long LatitudeUnits = 8000L * 3125;
    private const long LongitudeUnits = 8000L * 1024;

    /// <summary>Whether it is a whole code, which names a box by itself.</summary>
    public static bool IsFull(string code)
    {
        if (!IsValid(code) || code.IndexOf('+', StringComparison.Ordinal) != SeparatorAt) return false;
        return Value(code[0]) * 20 < 180 && Value(code[1]) * 20 < 360;
    }

    /// <summary>Whether it is the end of a code, which names a box near a known place.</summary>
    public static bool IsShort(string code) => IsValid(code) && code.IndexOf('+', StringComparison.Ordinal) < SeparatorAt;

    /// <summary>The box of a whole code.</summary>
    /// <exception cref="ArgumentException">It is none.</exception>
    public static CodeArea Decode(string code)
    {
        if (!IsFull(code)) throw new ArgumentException($"'{code}' is no whole Open Location Code.", nameof(code));
        var digits = code.ToUpperInvariant().Replace("+", "", StringComparison.Ordinal).TrimEnd('0');
        if (digits.Length > MostDigits) digits = digits[..MostDigits];
        long south = 0, west = 0;
        long high = LatitudeUnits * 400, wide = LongitudeUnits * 400;
        var at = 0;
        for (; at + 1 < digits.Length && at < PairDigits; at += 2)
        {
            south += Value(digits[at]) * (high /= 20);
            west += Value(digits[at + 1]) * (wide /= 20);
        }

        for (; at < digits.Length; at++)
        {
            south += Value(digits[at]) / 4 * (high /= 5);
            west += Value(digits[at]) % 4 * (wide /= 4);
        }

        return new CodeArea(
            (double)south / LatitudeUnits - 90,
            (double)west / LongitudeUnits - 180,
            (double)(south + high) / LatitudeUnits - 90,
            (double)(west + wide) / LongitudeUnits - 180);
    }

    /// <summary>The whole code nearest a place that ends like a short one.</summary>
    /// <param name="shortCode">The end of a code.</param>
    /// <param name="latitudeDeg">Of the place, degrees north.</param>
    /// <param name="longitudeDeg">Of the place, degrees east.</param>
    /// <exception cref="ArgumentException">It is no short code.</exception>
    public static string Recover(string shortCode, double latitudeDeg, double longitudeDeg)
    {
        if (!IsShort(shortCode)) throw new ArgumentException($"'{shortCode}' is no short Open Location Code.", nameof(shortCode));
        var missing = SeparatorAt - shortCode.IndexOf('+', StringComparison.Ordinal);
        // The missing digits fix a box of this height and width.
        var sizeDeg = Math.Pow(20, 2 - missing / 2);
        var code = Prefix(latitudeDeg, longitudeDeg, missing) + shortCode.ToUpperInvariant();
        var area = Decode(code);
        var (latitude, longitude) = (area.LatitudeDeg, area.LongitudeDeg);
        // The nearest may lie in the next box, but not beyond a pole.
        if (latitudeDeg + sizeDeg / 2 < latitude && latitude - sizeDeg >= -90) latitude -= sizeDeg;
        else if (latitudeDeg - sizeDeg / 2 > latitude && latitude + sizeDeg <= 90) latitude += sizeDeg;
        if (longitudeDeg + sizeDeg / 2 < longitude) longitude -= sizeDeg;
        else if (longitudeDeg - sizeDeg / 2 > longitude) longitude += sizeDeg;
        return Prefix(latitude, longitude, missing) + shortCode.ToUpperInvariant();
    }

    /// <summary>The first digits of a place's code, an even number of them, up to eight.</summary>
    private static string Prefix(double latitudeDeg, double longitudeDeg, int digits)
    {
        var up = Math.Clamp((long)Math.Floor((latitudeDeg + 90) * LatitudeUnits), 0, LatitudeUnits * 180 - 1);
        var turn = LongitudeUnits * 360;
        var east = (((long)Math.Floor((longitudeDeg + 180) * LongitudeUnits) % turn) + turn) % turn;
        long high = LatitudeUnits * 400, wide = LongitudeUnits * 400;
        var code = new char[digits];
        for (var at = 0; at < digits; at += 2)
        {
            code[at] = Digits[(int)(up / (high /= 20) % 20)];
            code[at + 1] = Digits[(int)(east / (wide /= 20) % 20)];
        }

        return new string(code);
    }

    private static bool IsValid(string code)
    {
        var plus = code.IndexOf('+', StringComparison.Ordinal);
        if (plus < 0 || plus != code.LastIndexOf('+') || plus > SeparatorAt || plus % 2 != 0) return false;
        // One digit alone after the sign would be half a pair.
        if (code.Length - plus - 1 == 1 || code.Length == 1) return false;
        var zero = code.IndexOf('0', StringComparison.Ordinal);
        if (zero >= 0)
        {
            // Padding stands for missing pairs of a whole code, up to the sign, with nothing after.
            if (plus != SeparatorAt || zero == 0 || zero % 2 != 0 || code.Length > plus + 1) return false;
            if (code[zero..plus].Any(c => c != '0')) return false;
        }

        return code.All(c => c is '+' or '0' || Value(c) >= 0);
    }

    private static int Value(char digit) => Digits.IndexOf(char.ToUpperInvariant(digit), StringComparison.Ordinal);
}

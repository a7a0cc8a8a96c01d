namespace NightWatch.Weather.Fake;

/// <summary>Numbers that look random and are a pure function of a seed and some integers.</summary>
internal static class Chance
{
    /// <summary>Mixes a key into a seed. Finaliser of SplitMix64 (Steele, Lea, Flood 2014).</summary>
    public static ulong Mix(ulong seed, long key)
    {
        var z = seed + unchecked((ulong)key * 0x9E3779B97F4A7C15UL) + 0x9E3779B97F4A7C15UL;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
        return z ^ (z >> 31);
    }

    /// <summary>Even in [0, 1).</summary>
    public static double Even(ulong seed, long key) => (Mix(seed, key) >> 11) * (1.0 / (1UL << 53));

    /// <summary>Normal with mean 0 and deviation 1 (Box and Muller 1958).</summary>
    public static double Normal(ulong seed, long key)
    {
        var u = 1 - Even(seed, 2 * key);
        return Math.Sqrt(-2 * Math.Log(u)) * Math.Cos(2 * Math.PI * Even(seed, 2 * key + 1));
    }
}

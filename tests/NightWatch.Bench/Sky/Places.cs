using System.Globalization;
using NightWatch.Sky.Frames;
using NightWatch.Sky.Moon;
using NightWatch.Sky.Sun;
using NightWatch.Sky.Time;

namespace NightWatch.Bench.Sky;

/// <summary>
/// Apparent places for comparison with other programs. In: a line for each time, days from J2000.0 TT and days from J2000.0 UT1. Out: the
/// Sun's and the Moon's x, y, z on the true equator and equinox of date, km, and Greenwich apparent sidereal time, radians.
/// </summary>
internal static class Places
{
    public static int Run(TextReader input, TextWriter output)
    {
        while (input.ReadLine() is { } line)
        {
            var fields = line.Split(' ');
            var tt = new TerrestrialTime(double.Parse(fields[0], CultureInfo.InvariantCulture));
            var ut = new UniversalTime(double.Parse(fields[1], CultureInfo.InvariantCulture));
            var sun = ApparentSun.OfDateKm(tt);
            var moon = ApparentMoon.OfDateKm(tt);
            output.WriteLine(FormattableString.Invariant(
                $"{sun.X:R} {sun.Y:R} {sun.Z:R} {moon.X:R} {moon.Y:R} {moon.Z:R} {EarthRotation.ApparentSiderealRad(ut, tt):R}"));
        }

        output.Flush();
        return 0;
    }
}

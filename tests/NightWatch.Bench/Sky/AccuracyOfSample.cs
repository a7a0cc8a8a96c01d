using System.Globalization;
using NightWatch.Sky.Ephemeris;
using NightWatch.Sky.Frames;
using NightWatch.Sky.Moon;
using NightWatch.Sky.Places;
using NightWatch.Sky.Sun;
using NightWatch.Sky.Time;

namespace NightWatch.Bench.Sky;

/// <summary>
/// Computes the altitude at each event of a sample from the full series, without fits or root finding, and reports how far it is from
/// its level. What the series themselves are worth is measured elsewhere, against other programs.
/// </summary>
internal static class AccuracyOfSample
{
    public static int Report(IReadOnlyList<MillionNights.Sample> samples)
    {
        var sun = new Residuals("Sun events and twilights");
        var moon = new Residuals("Moon's upper limb");
        var subject = new Residuals("subject at its minimum altitude");
        foreach (var s in samples)
        {
            var f = s.Figures;
            foreach (
                var (windows, level) in new[] { (f.SunUp, -50 / 60.0), (f.CivilDay, -6), (f.NauticalDay, -12), (f.AstronomicalDay, -18) })
                Each(f.Start, f.End, windows, u => sun.Add(Altitude(s, u, Body.Sun) - level, Rate(s, u, Body.Sun)));
            Each(f.Start, f.End, f.MoonUp, u => moon.Add(Altitude(s, u, Body.Moon), Rate(s, u, Body.Moon)));
            Each(f.Start, f.End, f.Subject, u => subject.Add(Altitude(s, u, Body.Subject) - s.MinAltitudeDeg, Rate(s, u, Body.Subject)));
        }

        Console.WriteLine(FormattableString.Invariant($"accuracy of {samples.Count:N0} of these nights against the series without fits:"));
        Residuals[] all = [sun, moon, subject];
        foreach (var residuals in all) Console.WriteLine(residuals);
        return all.All(r => r.Good) ? 0 : 1;
    }

    private enum Body
    {
        Sun,
        Moon,
        Subject,
    }

    private static void Each(double start, double end, NightWatch.Sky.Events.Windows windows, Action<double> add)
    {
        for (var i = 0; i < windows.Count; i++)
        {
            if (windows[i].Start > start) add(windows[i].Start);
            if (windows[i].End < end) add(windows[i].End);
        }
    }

    private static double Rate(MillionNights.Sample s, double u, Body body)
    {
        const double second = 1 / 86400.0 / DayFit.HalfWidthDays;
        return (Altitude(s, u + second, body) - Altitude(s, u - second, body)) / 2;
    }

    private static double Altitude(MillionNights.Sample s, double u, Body body)
    {
        var at = s.Fit.InstantAt(u);
        var tt = TerrestrialTime.Of(at);
        var observer = new Observer(s.Site.Position);
        var (sin, cos) = Math.SinCos(EarthRotation.ApparentSiderealRad(UniversalTime.Of(at), tt) + observer.LongitudeRad);
        var place = body switch
        {
            Body.Sun => ApparentSun.OfDateKm(tt),
            Body.Moon => ApparentMoon.OfDateKm(tt),
            _ => EquatorOfDate.FromIcrs(tt) * Light.Aberrate(s.Site.Subject, EarthOrbit.At(tt).Velocity),
        };
        if (body != Body.Subject)
            place -= new Vector3D(observer.AxisDistanceKm * cos, observer.AxisDistanceKm * sin, observer.EquatorDistanceKm);
        var zenith = new Vector3D(observer.CosLatitude * cos, observer.CosLatitude * sin, observer.SinLatitude);
        var altitude = 90 - place.AngleTo(zenith) / Angles.Degree;
        return body == Body.Moon ? altitude + 34 / 60.0 + Math.Asin(ApparentMoon.RadiusKm / place.Length) / Angles.Degree : altitude;
    }

    private sealed class Residuals(string name)
    {
        private int count;
        private double maxArcsec, sumArcsec, maxSeconds, sumSeconds;
        private int slow;

        // The bar: half a second, or one arcsecond where the body climbs slower than one arcsecond a second.
        public bool Good { get; private set; } = true;

        public void Add(double degrees, double degreesPerSecond)
        {
            var arcsec = Math.Abs(degrees) * 3600;
            var rate = Math.Abs(degreesPerSecond) * 3600;
            count++;
            maxArcsec = Math.Max(maxArcsec, arcsec);
            sumArcsec += arcsec * arcsec;
            if (rate < 1)
            {
                slow++;
                Good &= arcsec <= 1;
                return;
            }

            var seconds = arcsec / rate;
            maxSeconds = Math.Max(maxSeconds, seconds);
            sumSeconds += seconds * seconds;
            Good &= seconds <= 0.5;
        }

        public override string ToString() =>
            string.Create(
                CultureInfo.InvariantCulture,
                $"  {name,-32} {count,6} events: max {maxArcsec:F4}\" rms {Math.Sqrt(sumArcsec / count):F4}\"; in time max " +
                $"{maxSeconds:F4} s rms {Math.Sqrt(sumSeconds / Math.Max(1, count - slow)):F4} s ({slow} slower than 1\"/s)");
    }
}

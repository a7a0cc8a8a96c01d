using CsCheck;
using NightWatch.Sky.Ephemeris;
using NightWatch.Sky.Nights;
using NightWatch.Sky.Places;
using NightWatch.Sky.Subjects;
using NodaTime;

namespace NightWatch.Sky.Tests.Events;

/// <summary>
/// No pair of events missed, none invented: every night's windows against a scan that knows nothing of hour angles. It samples the
/// altitude every minute and refines each local extremum by golden section, so that a pair of crossings closer than a sample is seen too.
/// </summary>
public sealed class NothingMissedTests
{
    private const int Nights = 120;

    // An extremum this near the level is a touch: found or refused is the same within the last digits of a double.
    private const double TouchDeg = 1e-9;

    private static readonly Gen<GeoPosition> Anywhere = Gen.Select(
        Gen.Frequency((8, Gen.Double[-90, 90]), (1, Gen.Double[89.9, 90]), (1, Gen.Int[-1, 1].Select(side => 90.0 * side))),
        Gen.Double[-180, 180],
        Gen.Double[0, 6000],
        (latitude, longitude, elevation) => new GeoPosition(latitude, longitude, elevation));

    private static readonly Gen<LocalDate> AnyNight = Gen.Int[0, 18261].Select(day => new LocalDate(2000, 1, 1).PlusDays(day));

    private static readonly Gen<Subject> AnyFixed =
        Gen.Select(Gen.Double[0, 360], Gen.Double[-90, 90], (ra, dec) => (Subject)new Subject.FixedPoint("any", ra % 360, dec));

    private readonly SkyEphemeris ephemeris = new();

    [Fact]
    public void Astronomical_night_is_the_scan_of_the_Sun() =>
        Gen.Select(Anywhere, AnyNight).Sample((place, night) => CheckSun(place, night), iter: Nights, threads: 1);

    [Fact]
    public void A_Sun_that_just_touches_18_degrees_is_found_or_refused_rightly() =>
        // Move the place along its meridian until the Sun's lowest altitude is the level plus a hair.
        Gen.Select(Gen.Double[40, 70], Gen.Bool, Gen.Double[-180, 180], AnyNight, Hair)
            .Sample(
                (latitude, south, longitude, night, hair) =>
                {
                    var place = Graze(
                        lat => Sky(south ? -lat : lat, longitude, night).Lowest((sky, at) => sky.Sun(at)),
                        -18 + hair,
                        latitude - 25,
                        latitude + 20);
                    if (place is { } lat) CheckSun(new(south ? -lat : lat, longitude), night);
                },
                iter: Nights,
                threads: 1);

    [Fact]
    public void Moonrises_and_moonsets_are_the_scan_of_the_limb() =>
        Gen.Select(Anywhere, AnyNight).Sample((place, night) => CheckMoon(place, night), iter: Nights, threads: 1);

    [Fact]
    public void A_Moon_that_skims_the_horizon_is_found_or_refused_rightly() =>
        Gen.Select(Gen.Double[58, 88], Gen.Bool, Gen.Bool, Gen.Double[-180, 180], AnyNight, Hair).Sample(
            (latitude, south, upper, longitude, night, hair) =>
            {
                double Extreme(double lat)
                {
                    var over = Sky(south ? -lat : lat, longitude, night);
                    return upper ? -over.Lowest((sky, at) => -sky.MoonLimb(at)) : over.Lowest((sky, at) => sky.MoonLimb(at));
                }

                if (Graze(Extreme, hair, latitude - 8, Math.Min(latitude + 8, 90)) is { } lat)
                    CheckMoon(new(south ? -lat : lat, longitude), night);
            },
                iter: Nights / 2,
                threads: 1);

    [Fact]
    public void Subject_windows_are_the_scan_of_the_subject() =>
        Gen.Select(Anywhere, AnyNight, AnyFixed, Gen.Double[-30, 89]).Sample(CheckSubject, iter: Nights, threads: 1);

    [Fact]
    public void A_subject_that_culminates_a_hair_above_the_minimum_is_found_or_refused_rightly() =>
        Gen.Select(Anywhere, AnyNight, AnyFixed, Hair, Gen.Bool).Sample(
            (place, night, subject, hair, upper) =>
            {
                var over = new SiteSkyAt(place, night, ephemeris);
                var extreme = upper
                    ? -over.Lowest((sky, at) => -sky.Subject(subject, at))
                    : over.Lowest((sky, at) => sky.Subject(subject, at));
                CheckSubject(place, night, subject, Math.Clamp(extreme + hair, -90, 90));
            },
            iter: Nights,
            threads: 1);

    private static Gen<double> Hair =>
        Gen.Select(Gen.Double[-7, -1.5], Gen.Bool, (power, above) => (above ? 1 : -1) * Math.Pow(10, power));

    private SiteSkyAt Sky(double latitude, double longitude, LocalDate night) => new(new(latitude, longitude), night, ephemeris);

    private void CheckSun(GeoPosition place, LocalDate night)
    {
        var sky = NightSky.Of(place, DateTimeZone.Utc, night, new Subject.Stars(), ephemeris: ephemeris);
        var at = new SiteSkyAt(place, night, ephemeris);
        Check(sky.AstronomicalNight, sky.Span, t => -18 - at.Sun(t));
    }

    private void CheckMoon(GeoPosition place, LocalDate night)
    {
        var sky = NightSky.Of(place, DateTimeZone.Utc, night, new Subject.Stars(), ephemeris: ephemeris);
        var at = new SiteSkyAt(place, night, ephemeris);
        var up = at.MoonLimb(sky.Span.Start) >= 0;
        var windows = new List<Interval>();
        var edges = sky.Moon.Rises.Concat(sky.Moon.Sets).Order().ToList();
        var start = sky.Span.Start;
        foreach (var edge in edges.Append(sky.Span.End))
        {
            if (up) windows.Add(new(start, edge));
            if (edge != sky.Span.End) Assert.Contains(edge, up ? sky.Moon.Sets : sky.Moon.Rises);
            up = !up;
            start = edge;
        }

        Check(windows, sky.Span, at.MoonLimb);
    }

    private void CheckSubject(GeoPosition place, LocalDate night, Subject subject, double minAltitudeDeg)
    {
        var sky = NightSky.Of(place, DateTimeZone.Utc, night, subject, minAltitudeDeg, ephemeris: ephemeris);
        var at = new SiteSkyAt(place, night, ephemeris);
        Check(sky.SubjectWindows, sky.Span, t => at.Subject(subject, t) - minAltitudeDeg);
    }

    private static void Check(IReadOnlyList<Interval> windows, Interval span, Func<Instant, double> height)
    {
        var scan = Scan(span, height);
        var found = windows.SelectMany(w => new[] { w.Start, w.End }).Where(edge => edge != span.Start && edge != span.End).ToList();
        Assert.Equal(scan.Count, found.Count);
        foreach (var (edge, (low, high)) in found.Zip(scan))
        {
            // Within the bracket of the scan, or where body and level part so slowly that the height is the measure.
            var near = edge >= low - Duration.FromMilliseconds(1) && edge <= high + Duration.FromMilliseconds(1);
            Assert.True(near || Math.Abs(height(edge)) < 1e-7, $"{edge} is not between {low} and {high}; height {height(edge)}");
            Assert.InRange(height(edge), -2e-6, 2e-6);
        }

        foreach (var window in windows)
        {
            if (window.Duration > Duration.FromMilliseconds(10)) Assert.True(height(window.Start + window.Duration / 2) > -TouchDeg);
        }
    }

    private static List<(Instant Low, Instant High)> Scan(Interval span, Func<Instant, double> height)
    {
        // One sample beyond each end, so that an extremum in the first or last minute has neighbours too.
        var step = Duration.FromMinutes(1);
        var points = new List<(Instant At, double Height)> { Point(span.Start - step) };
        for (var at = span.Start; at < span.End; at += step) points.Add(Point(at));
        points.Add(Point(span.End));
        points.Add(Point(span.End + step));

        var refined = points[1..^1];
        for (var i = 1; i < points.Count - 1; i++)
        {
            var (before, here, after) = (points[i - 1].Height, points[i].Height, points[i + 1].Height);
            if ((here - before) * (after - here) > 0 || Math.Abs(here) > 0.6) continue;
            var peak = here >= before ? 1 : -1;
            var extremum = Point(Extremum(points[i - 1].At, points[i + 1].At, at => peak * height(at)));
            if (Math.Abs(extremum.Height) > TouchDeg && extremum.At > span.Start && extremum.At < span.End) refined.Add(extremum);
        }

        refined.Sort((a, b) => a.At.CompareTo(b.At));
        return
        [
            .. refined.Zip(refined.Skip(1)).Where(p => p.First.Height >= 0 != p.Second.Height >= 0).Select(p => (p.First.At, p.Second.At)),
        ];

        (Instant At, double Height) Point(Instant at) => (at, height(at));
    }

    private static Instant Extremum(Instant low, Instant high, Func<Instant, double> rising)
    {
        for (var i = 0; i < 45; i++)
        {
            var (a, b) = (low + (high - low) * 0.382, low + (high - low) * 0.618);
            if (rising(a) < rising(b)) low = a;
            else high = b;
        }

        return low;
    }

    private static double? Graze(Func<double, double> extreme, double level, double low, double high)
    {
        var below = extreme(low) < level;
        if (extreme(high) < level == below) return null;
        for (var i = 0; i < 50; i++)
        {
            var middle = (low + high) / 2;
            if (extreme(middle) < level == below) low = middle;
            else high = middle;
        }

        return low;
    }

    private readonly struct SiteSkyAt(GeoPosition place, LocalDate night, SkyEphemeris ephemeris)
    {
        private readonly SiteSky sky = new(place, NightSpan.Of(DateTimeZone.Utc, night), ephemeris);

        public double Lowest(Func<SiteSkyAt, Instant, double> height)
        {
            var self = this;
            var step = Duration.FromMinutes(5);
            var best = sky.Span.Start;
            for (var at = best; at <= sky.Span.End; at += step)
            {
                if (height(self, at) < height(self, best)) best = at;
            }

            var low = Instant.Max(best - step, sky.Span.Start);
            var high = Instant.Min(best + step, sky.Span.End);
            return height(self, Extremum(low, high, at => -height(self, at)));
        }

        public double Sun(Instant at) => sky.SunAt(at).AltitudeDeg;

        public double MoonLimb(Instant at) =>
            sky.MoonAt(at) is var moon ? moon.Direction.AltitudeDeg + moon.SemidiameterDeg + 34 / 60.0 : 0;

        public double Subject(Subject subject, Instant at) => sky.SubjectAt(subject, at)!.Value.AltitudeDeg;
    }
}

using System.Runtime.Intrinsics;
using NightWatch.Sky.Ephemeris;
using NightWatch.Sky.Events;
using NightWatch.Sky.Frames;
using NightWatch.Sky.Places;

namespace NightWatch.Sky.Tests.Events;

/// <summary>Handbook examples whose places of date are given, so that the geometry is tested by itself.</summary>
public sealed class WorkedExamplesTests
{
    [Fact]
    public void Altitude_and_azimuth_match_Meeus_example_13b()
    {
        // Meeus, 2nd ed., example 13.b: Venus 23h09m16.641s, −6°43′11.61″ from the U.S. Naval Observatory, 38°55′17″ N 77°03′56″ W,
        // apparent sidereal time of Greenwich 8h34m56.853s: azimuth 68.0337° from the south, altitude 15.1249°
        var observer = new Observer(new GeoPosition(38 + 55 / 60.0 + 17 / 3600.0, -(77 + 3 / 60.0 + 56 / 3600.0)));
        var venus = Vector3D.FromDegrees(Hours(23, 9, 16.641), -(6 + 43 / 60.0 + 11.61 / 3600));
        Vector256<double>[] track = [Vector256.Create(venus.X, venus.Y, venus.Z, Hours(8, 34, 56.853) * Angles.Degree)];
        var seen = Horizontal.Of(AltitudeCurve.OfFixed(track, observer).Local(0));
        Assert.Equal(15.1249, seen.AltitudeDeg, 0.0001);
        Assert.Equal(180 + 68.0337, seen.AzimuthDeg, 0.00015);
    }

    [Fact]
    public void Rise_transit_and_set_match_Meeus_example_15a()
    {
        // Meeus, 2nd ed., example 15.a: Venus at Boston, 1988 March 20; three days' places at 0h TD, Delta T 56 s, sidereal time of
        // Greenwich at 0h UT 11h50m58.10s. In fractions of the day: set 0.12130, rise 0.51766, transit 0.81980; to the second by npm
        // astronomia.
        var observer = new Observer(new GeoPosition(42.3333, -71.0833));
        Vector3D[] places =
        [
            Vector3D.FromDegrees(Hours(2, 42, 43.25), 18 + 2 / 60.0 + 51.4 / 3600),
            Vector3D.FromDegrees(Hours(2, 46, 55.51), 18 + 26 / 60.0 + 27.3 / 3600),
            Vector3D.FromDegrees(Hours(2, 51, 7.69), 18 + 49 / 60.0 + 38.7 / 3600),
        ];
        // The argument is days from 0h UT of 20 March; the places stand at −1, 0, 1 day less Delta T.
        double[] nodes = [-1 - 56 / 86400.0, -56 / 86400.0, 1 - 56 / 86400.0];
        var samples = nodes.Zip(places, (u, place) => Vector256.Create(
            place.X, place.Y, place.Z, (Hours(11, 50, 58.10) + 360.985647 * u) * Angles.Degree)).ToArray();
        var track = new Vector256<double>[3];
        Polynomial.Interpolate(nodes, samples, track);

        var venus = AltitudeCurve.OfFixed(track, observer);
        Span<CurvePoint> room = stackalloc CurvePoint[MonotoneArcs.MaxKnots];
        var up = Windows.Above(venus, room[..MonotoneArcs.Divide(venus, 0, 1, room)], Math.Sin(-0.5667 * Angles.Degree));
        Assert.Equal(0.12130, up.FirstEnd(1), 0.00001);
        Assert.Equal(0.51766, up.FirstStart(0), 0.00001);
        var transit = Meridian.First(venus, 0, 1, 0);
        Assert.Equal(0.81980, transit, 0.00001);
        Assert.Equal(Seconds(2, 54, 40), up.FirstEnd(1) * 86400, 1.0);
        Assert.Equal(Seconds(12, 25, 26), up.FirstStart(0) * 86400, 1.0);
        Assert.Equal(Seconds(19, 40, 30), transit * 86400, 1.0);
    }

    private static double Hours(int hours, int minutes, double seconds) => 15 * (hours + minutes / 60.0 + seconds / 3600);

    private static double Seconds(int hours, int minutes, int seconds) => 3600 * hours + 60 * minutes + seconds;
}

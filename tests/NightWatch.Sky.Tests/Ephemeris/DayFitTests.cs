using CsCheck;
using NightWatch.Sky.Ephemeris;
using NightWatch.Sky.Events;
using NightWatch.Sky.Frames;
using NightWatch.Sky.Moon;
using NightWatch.Sky.Places;
using NightWatch.Sky.Sun;
using NightWatch.Sky.Time;
using NodaTime;

namespace NightWatch.Sky.Tests.Ephemeris;

public sealed class DayFitTests
{
    private static readonly Gen<(int Day, double U)> AnyTime = Gen.Select(Gen.Int[10957, 29219], Gen.Double[-1, 1]);

    [Fact]
    public void Fits_reproduce_the_series_to_a_thousandth_of_an_arcsecond() => AnyTime.Sample(
        time =>
        {
            var fit = new DayFit(time.Day);
            var at = fit.InstantAt(time.U);
            var u = fit.ArgumentOf(at);
            var tt = TerrestrialTime.Of(at);
            // A leap second inside the fit shifts one side of it by a second: 0.55″ of Moon at most
            var leap = TerrestrialTime.MinusUtcSeconds(at) != TerrestrialTime.MinusUtcSeconds(fit.Centre);
            Assert.InRange(Arcseconds(fit.SunKm(u), ApparentSun.OfDateKm(tt)), 0, leap ? 0.05 : 0.0001);
            Assert.InRange(Arcseconds(fit.MoonKm(u), ApparentMoon.OfDateKm(tt)), 0, leap ? 0.7 : 0.001);
            Assert.InRange(fit.MoonKm(u).Length - ApparentMoon.OfDateKm(tt).Length, -0.1, 0.1);
        },
        iter: 300,
        threads: 1);

    [Fact]
    public void Fixed_directions_reproduce_precession_nutation_and_aberration_to_a_hundredth_of_an_arcsecond() =>
        Gen.Select(AnyTime, Gen.Double[0, 360], Gen.Double[-90, 90]).Sample(
            (time, ra, dec) =>
            {
                var fit = new DayFit(time.Day);
                var icrs = Vector3D.FromDegrees(ra, dec);
                var track = new System.Runtime.Intrinsics.Vector256<double>[DayFit.FixedTerms];
                fit.Fixed(icrs, track);
                Polynomial.At(track, time.U, out var value, out _);
                var tt = TerrestrialTime.Of(fit.InstantAt(time.U));
                var expected = EquatorOfDate.FromIcrs(tt) * Light.Aberrate(icrs, EarthOrbit.At(tt).Velocity);
                Assert.InRange(Arcseconds(new(value[0], value[1], value[2]), expected), 0, 0.01);
            },
            iter: 300,
            threads: 1);

    [Fact]
    public void Sidereal_time_in_a_fit_is_the_apparent_one() => AnyTime.Sample(
        time =>
        {
            var fit = new DayFit(time.Day);
            var at = fit.InstantAt(time.U);
            Polynomial.At(fit.Sun, fit.ArgumentOf(at), out var value, out _);
            var expected = EarthRotation.ApparentSiderealRad(UniversalTime.Of(at), TerrestrialTime.Of(at));
            Assert.InRange(Math.IEEERemainder(value[3] - expected, Math.Tau) / Angles.Arcsecond, -0.0005, 0.0005);
        },
        iter: 300,
        threads: 1);

    [Fact]
    public void The_slope_of_a_curve_is_that_of_its_values() =>
        Gen.Select(AnyTime, Gen.Double[-90, 90], Gen.Double[-180, 180], Gen.Double[0, 6000]).Sample(
            (time, latitude, longitude, elevation) =>
            {
                var fit = new DayFit(time.Day);
                var limb = AltitudeCurve.OfUpperLimb(fit.Moon, new Observer(new(latitude, longitude, elevation)), ApparentMoon.RadiusKm);
                const double h = 1e-5;
                var u = Math.Clamp(time.U, -1 + h, 1 - h);
                Assert.Equal((limb.At(u + h).Value - limb.At(u - h).Value) / (2 * h), limb.At(u).Slope, 1e-7);
            },
            iter: 300,
            threads: 1);

    [Fact]
    public void Instants_and_arguments_are_each_others_inverse() => AnyTime.Sample(
        time =>
        {
            var fit = new DayFit(time.Day);
            Assert.Equal(time.U, fit.ArgumentOf(fit.InstantAt(time.U)), 1e-11);
        },
        iter: 50,
        threads: 1);

    [Fact]
    public void An_ephemeris_gives_the_same_fit_again_and_forgets_only_what_shares_its_slot()
    {
        var ephemeris = new SkyEphemeris(4);
        var noon = Instant.FromUtc(2026, 8, 12, 12, 0);
        var fit = ephemeris.For(noon);
        Assert.Same(fit, ephemeris.For(noon + Duration.FromHours(11)));
        Assert.NotSame(fit, ephemeris.For(noon + Duration.FromDays(1)));
        Assert.Same(fit, ephemeris.For(noon));
        Assert.NotSame(fit, ephemeris.For(noon + Duration.FromDays(4)));
        Assert.NotSame(fit, ephemeris.For(noon));
        Assert.Equal(fit.SunKm(0), ephemeris.For(noon).SunKm(0));
    }

    private static double Arcseconds(Vector3D a, Vector3D b) => a.AngleTo(b) / Angles.Arcsecond;
}

using NightWatch.Sky.Frames;
using NightWatch.Sky.Time;

namespace NightWatch.Sky.Tests.Frames;

public sealed class EquatorOfDateTests
{
    private static readonly TerrestrialTime Date = TerrestrialTime.OfJulianDate(2400000.5 + 50123.9999);

    [Fact]
    public void Bias_and_precession_match_ERFA() =>
        // ERFA 2.0.0 test suite, t_bp06 (rbp)
        AssertClose(
            new(
                new(0.9999995505176007047, 0.8695404617348208406e-3, 0.3779735201865589104e-3),
                new(-0.8695404723772031414e-3, 0.9999996219496027161, -0.1361752497080270143e-6),
                new(-0.3779734957034089490e-3, -0.1924880847894457113e-6, 0.9999999285679971958)),
            EquatorOfDate.FromIcrs(Date, default),
            1e-12);

    [Fact]
    public void Bias_precession_and_nutation_match_ERFA_within_the_shorter_nutation() =>
        // ERFA 2.0.0 test suite, t_pnm06a, with the 1365-term nutation: 1 milliarcsecond is 5e-9
        AssertClose(
            new(
                new(0.9999995832794205484, 0.8372382772630962111e-3, 0.3639684771140623099e-3),
                new(-0.8372533744743683605e-3, 0.9999996486492861646, 0.4132905944611019498e-4),
                new(-0.3639337469629464969e-3, -0.4163377605910663999e-4, 0.9999999329094260057)),
            EquatorOfDate.FromIcrs(Date),
            1e-8);

    private static void AssertClose(Rotation expected, Rotation actual, double tolerance)
    {
        foreach (var (e, a) in new[] { (expected.X, actual.X), (expected.Y, actual.Y), (expected.Z, actual.Z) })
            Assert.InRange((e - a).Length, 0, tolerance);
    }
}

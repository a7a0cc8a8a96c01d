using CsCheck;
using NightWatch.Sky.Eclipses;
using NightWatch.Sky.Ephemeris;
using NightWatch.Sky.Nights;
using NightWatch.Sky.Places;
using NodaTime;
using NodaTime.Text;

namespace NightWatch.Sky.Tests.Eclipses;

/// <summary>
/// Sunlight on the Moon through an eclipse, against published contact times: "Eclipses During 2007" and the Five Millennium Canon of Lunar
/// Eclipses (Espenak and Meeus, NASA/TP-2009-214172) as quoted on public pages, in UT with the Delta T of the prediction. Contacts agree to
/// 4 s (LunarEclipsesTests).
/// </summary>
public sealed class SunlightShareTests
{
    private static readonly Duration Margin = Duration.FromSeconds(10);

    // The Moon's limb alone takes no light to speak of: what the share is summed over lies up to a fiftieth of its disc inside.
    private static readonly Duration LimbPasses = Duration.FromMinutes(3);

    // P1 of 2007 is published ten seconds out of symmetry with the other contacts; it is taken from them: greatest less (P4 less greatest).
    [Theory]
    [InlineData("2007-08-28", 65, "07:53:43", "09:52:22", "11:22:24", "13:21:01")]
    [InlineData("2026-03-03", 75, "08:44:22", "11:04:26", "12:02:45", "14:22:59")]
    public void A_total_eclipse_takes_all_but_the_bent_light_and_gives_it_back(
        string date, double deltaT, string p1, string u2, string u3, string p4)
    {
        var (outer, inner) = (Span(date, deltaT, p1, p4), Span(date, deltaT, u2, u3));

        Assert.Equal(1, Share(outer.Start - Margin));
        Assert.Equal(1, Share(outer.End + Margin));
        Assert.InRange(Share(outer.Start + LimbPasses), 0.99, 0.999999);
        Assert.InRange(Share(outer.End - LimbPasses), 0.99, 0.999999);
        for (var at = inner.Start + Margin; at < inner.End - Margin; at += Duration.FromMinutes(1)) Assert.InRange(Share(at), 1e-5, 2e-4);
        Falls(outer.Start + LimbPasses, inner.Start - LimbPasses, Duration.FromMinutes(1));
        Falls(outer.End - LimbPasses, inner.End + LimbPasses, -Duration.FromMinutes(1));
    }

    /// <summary>
    /// With the umbral magnitude m the Moon's last limb stands f = 1 − m of its diameter beyond the umbra. What is lit is a crescent of
    /// that depth, more than a segment cut off straight and less than what another Moon, moved by it, leaves free. By as much, times the
    /// ratio of their diameters (0.90 to 1.08 for Moon and Sun as they come), the Sun's disc is free as seen from that limb, and by less
    /// elsewhere; from the outer half of the crescent by at least half as much.
    /// </summary>
    [Fact]
    public void A_partial_eclipse_leaves_what_its_magnitude_leaves()
    {
        const double Beyond = 1 - 0.9299; // 2026-08-28, as published
        var span = Span("2026-08-28", 75, "01:23:55", "07:01:41");
        Assert.Equal(1, Share(span.Start - Margin));
        Assert.Equal(1, Share(span.End + Margin));
        Assert.InRange(Share(span.Start + LimbPasses), 0.99, 0.999999);

        var least = Share(Span("2026-08-28", 75, "04:12:49", "05:51:55").Start);
        var most = 2e-4 + LeftFree(Beyond) * LeftFree(1.08 * Beyond);
        Assert.InRange(least, CutOff(Beyond / 2) * CutOff(0.9 * Beyond / 2), most);
        Assert.InRange(most, 0, 0.01);
        foreach (var minutes in new[] { -60, -10, 10, 60 })
            Assert.True(Share(Span("2026-08-28", 75, "04:12:49", "05:51:55").Start + Duration.FromMinutes(minutes)) > least);
    }

    /// <summary>
    /// Nowhere a jump: a straight edge uncovers at most 2/(πr) of a disc of radius r for each step of its way, which is 6.7e-4 for each
    /// second of arc of the Sun's, and the Moon passes the shadow by at most 0.65″ a second.
    /// </summary>
    [Fact]
    public void The_light_changes_without_jumps() =>
        Gen.Select(Gen.Int[0, 400], Gen.Int[1, 120], Gen.Bool).Sample((minute, seconds, isTotal) =>
        {
            var at = (isTotal ? Instant.FromUtc(2026, 3, 3, 8, 20) : Instant.FromUtc(2026, 8, 28, 1, 0)) + Duration.FromMinutes(minute);
            return Math.Abs(Share(at + Duration.FromSeconds(seconds)) - Share(at)) <= 6.7e-4 * 0.65 * seconds;
        });

    [Fact]
    public void A_full_moon_is_dimmed_in_an_eclipse_alone()
    {
        foreach (var eclipse in LunarEclipses.Between(Instant.FromUtc(2020, 1, 1, 0, 0), Instant.FromUtc(2030, 1, 1, 0, 0)))
        {
            // On 2021-11-19 a 40th of the Moon's diameter stayed out of the umbra, deep in the penumbra.
            Assert.InRange(Share(eclipse.Greatest), eclipse.Total is null ? 1.01e-4 : 1e-5, eclipse.Total is null ? 1 : 2e-4);
            Assert.Equal(1, Share(eclipse.Penumbral.Start - Margin));
            Assert.Equal(1, Share(eclipse.Penumbral.End + Margin));
        }

        // Full Moons of 2026 that no eclipse is published for (Espenak, LEcat/LE2001-2100.html).
        Assert.All(
            [Instant.FromUtc(2026, 1, 3, 10, 3), Instant.FromUtc(2026, 6, 29, 23, 57), Instant.FromUtc(2026, 12, 24, 1, 28)],
            full => Assert.Equal(1, Share(full)));
    }

    private static void Falls(Instant from, Instant to, Duration step)
    {
        var before = Share(from);
        for (var at = from + step; step > Duration.Zero ? at < to : at > to; at += step)
        {
            var share = Share(at);
            Assert.True(share < before, $"{at}: {share} after {before}");
            before = share;
        }
    }

    /// <summary>As a place on the Earth has it; the shadow is the same for all.</summary>
    private static double Share(Instant at)
    {
        var share = new SiteSky(new GeoPosition(-44, 170.5), new Interval(at, at + Duration.FromMinutes(1))).MoonAt(at).SunlightShare;
        var fit = new DayFit((int)Math.Floor((at - NodaConstants.UnixEpoch).TotalDays));
        Assert.Equal(EarthShadow.At(fit, fit.ArgumentOf(at)).SunlightShare, share, 9);
        return share;
    }

    /// <summary>Share of a disc cut off straight at a share of its diameter.</summary>
    private static double CutOff(double depth)
    {
        var angle = 2 * Math.Acos(1 - 2 * depth);
        return (angle - Math.Sin(angle)) / (2 * Math.PI);
    }

    /// <summary>Share of a disc that another of its size, moved by a share of its diameter, leaves free.</summary>
    private static double LeftFree(double moved) => 1 - 2 / Math.PI * (Math.Acos(moved) - moved * Math.Sqrt(1 - moved * moved));

    private static Interval Span(string date, double deltaT, string from, string to) => new(At(date, deltaT, from), At(date, deltaT, to));

    // TT less UTC was 65.184 s in 2007 and is taken as 69.184 s in 2026.
    private static Instant At(string date, double deltaT, string time) =>
        InstantPattern.General.Parse($"{date}T{time}Z").Value
        + Duration.FromSeconds(deltaT - (date.StartsWith("2007", StringComparison.Ordinal) ? 65.184 : 69.184));
}

using NightWatch.Sky.Ephemeris;
using NightWatch.Sky.Moon;
using NodaTime;

namespace NightWatch.Sky.Eclipses;

/// <summary>Finds eclipses of the Moon.</summary>
public static class LunarEclipses
{
    // Greatest eclipse is within an hour of full Moon, the longest penumbral eclipse lasts 6 h 20 min.
    private static readonly Duration LongestHalf = Duration.FromHours(5);

    // 1 ms in a fit's argument.
    private const double Tolerance = 1e-8 / DayFit.HalfWidthDays;

    /// <summary>Eclipses of which some stage falls into a span, in order.</summary>
    /// <param name="from">1900 to 2100.</param>
    /// <param name="to">End of the span, not part of it.</param>
    public static IReadOnlyList<LunarEclipse> Between(Instant from, Instant to)
    {
        var eclipses = new List<LunarEclipse>();
        for (var full = MoonPhases.Next(PhaseName.Full, from - LongestHalf);
            full.At < to + LongestHalf;
            full = MoonPhases.Next(PhaseName.Full, full.At + Duration.FromDays(1)))
        {
            if (At(full.At) is { } eclipse && eclipse.Penumbral.End > from && eclipse.Penumbral.Start < to) eclipses.Add(eclipse);
        }

        return eclipses;
    }

    /// <summary>The eclipse at a full Moon; null for none.</summary>
    internal static LunarEclipse? At(Instant fullMoon)
    {
        var fit = new DayFit((int)Math.Floor((fullMoon - NodaConstants.UnixEpoch).TotalDays - 0.55));
        var half = LongestHalf.TotalDays / DayFit.HalfWidthDays;
        var middle = fit.ArgumentOf(fullMoon);
        var greatest = Nearest(fit, middle - half, middle + half);
        var shadow = EarthShadow.At(fit, greatest);
        var moon = shadow.MoonRad;
        if (Contacts(fit, greatest, half, at => at.PenumbraRad + at.MoonRad) is not { } penumbral) return null;

        var partial = Contacts(fit, greatest, half, at => at.UmbraRad + at.MoonRad);
        var total = Contacts(fit, greatest, half, at => at.UmbraRad - at.MoonRad);
        return new(
            total is not null ? LunarEclipseKind.Total : partial is not null ? LunarEclipseKind.Partial : LunarEclipseKind.Penumbral,
            fit.InstantAt(greatest),
            penumbral,
            partial,
            total,
            (shadow.PenumbraRad + moon - shadow.SeparationRad) / (2 * moon),
            (shadow.UmbraRad + moon - shadow.SeparationRad) / (2 * moon),
            (shadow.NorthOfAxis ? 1 : -1) * shadow.AxisDistanceKm / EarthShadow.EarthRadiusKm);
    }

    // The distance has one minimum within hours of full Moon: golden sections.
    private static double Nearest(DayFit fit, double low, double high)
    {
        const double Share = 0.6180339887498949;
        double a = high - Share * (high - low), b = low + Share * (high - low);
        double atA = EarthShadow.At(fit, a).AxisDistanceKm, atB = EarthShadow.At(fit, b).AxisDistanceKm;
        while (high - low > Tolerance)
        {
            if (atA < atB)
            {
                (high, b, atB) = (b, a, atA);
                a = high - Share * (high - low);
                atA = EarthShadow.At(fit, a).AxisDistanceKm;
            }
            else
            {
                (low, a, atA) = (a, b, atB);
                b = low + Share * (high - low);
                atB = EarthShadow.At(fit, b).AxisDistanceKm;
            }
        }

        return (low + high) / 2;
    }

    private static Interval? Contacts(DayFit fit, double greatest, double half, Func<EarthShadow, double> reach)
    {
        if (!Inside(greatest)) return null;
        return new(fit.InstantAt(Edge(greatest - half)), fit.InstantAt(Edge(greatest + half)));

        bool Inside(double u)
        {
            var shadow = EarthShadow.At(fit, u);
            return shadow.SeparationRad < reach(shadow);
        }

        double Edge(double outside)
        {
            var inside = greatest;
            while (Math.Abs(inside - outside) > Tolerance)
            {
                var between = (inside + outside) / 2;
                if (Inside(between)) inside = between;
                else outside = between;
            }

            return inside;
        }
    }
}

namespace NightWatch.Weather.Fake;

/// <summary>A front's doings at a place and hour: how strong it is and how far off in time.</summary>
/// <param name="Strength">0 to about 1.</param>
/// <param name="HoursAfter">Hours since it passed, stretched by its own breadth; negative while it is coming.</param>
internal readonly record struct FrontHere(double Strength, double HoursAfter);

/// <summary>
/// The procession of fronts: one sequence for each hemisphere that travels east, so that a site farther east has the same weather later.
/// </summary>
internal sealed class Fronts(ulong seed)
{
    private const double SpacingH = 80;
    private const double DegPerHour = 0.45;
    private const double LagHoursPerDegLat = 0.5;
    private const long Many = 1_000_003;

    // The sequence has one seam, where east meets west again: in mid-Atlantic, where nobody keeps a dark site.
    private const double SeamLongitudeDeg = -33;

    private readonly GaussianField shiftNoise = new(Chance.Mix(seed, 21), 2500, 60, 30);
    private readonly GaussianField strengthNoise = new(Chance.Mix(seed, 22), 2500, 60, 30);

    /// <summary>The fronts around an hour, as a view sees them.</summary>
    /// <param name="where">Place.</param>
    /// <param name="hours">Valid time, hours of the Unix epoch.</param>
    /// <param name="view">The truth or a run.</param>
    /// <param name="fronts">Filled in order of arrival, the first long gone.</param>
    public void Near(in Spot where, double hours, in ForecastView view, Span<FrontHere> fronts)
    {
        var hemisphere = where.LatitudeDeg < 0 ? 1L : 0L;
        var east = (where.LongitudeDeg - SeamLongitudeDeg + 360) % 360;
        var local = hours - east / DegPerHour - LagHoursPerDegLat * (Math.Abs(where.LatitudeDeg) - 45);
        var belt = Belt(Math.Abs(where.LatitudeDeg));
        var first = (long)Math.Floor(local / SpacingH) - 1;
        for (var i = 0; i < fronts.Length; i++)
        {
            var id = Chance.Mix(seed, 2 * (first + i) + hemisphere);
            var arrives = SpacingH * (first + i + 0.5 + 0.36 * (2 * Chance.Even(id, 1) - 1));
            var breadth = 0.75 + 0.8 * Chance.Even(id, 2);
            // A front in four is so weak that two clear spells grow into one.
            var strength = Chance.Even(id, 3) < 0.28 ? 0.12 * Chance.Even(id, 4) : 0.4 + 0.6 * Chance.Even(id, 4);
            var unruly = Chance.Even(id, 5) < 0.25 ? 2.4 : 0.8;
            var error = view.ErrorAt(hours);
            if (error.LeadH > 0)
            {
                // The front's number stands in for a third dimension of the noise, so that each has its own error.
                var own = (double)(Chance.Mix(id, 6) % Many);
                arrives += unruly * Math.Min(14, 0.085 * error.LeadH) * error.Draw(shiftNoise, where.Unit, own);
                strength = Math.Clamp(
                    strength + unruly * Math.Min(0.45, 0.0032 * error.LeadH) * error.Draw(strengthNoise, where.Unit, own), 0, 1.1);
            }

            fronts[i] = new FrontHere(strength * belt, (local - arrives) / breadth);
        }
    }

    /// <summary>Fronts belong to the middle latitudes; the trades and the high poles see little of them.</summary>
    private static double Belt(double absLatitude) => 0.15 + 0.85 * Shape.Step(12, 38, absLatitude) * (1 - 0.5 * Shape.Step(66, 85, absLatitude));
}

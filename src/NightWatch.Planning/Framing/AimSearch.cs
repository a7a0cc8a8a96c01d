using NightWatch.Planning.Watches;

namespace NightWatch.Planning.Framing;

/// <summary>Looks for the heading that has the subject in in most shots: all azimuths of every altitude that may hold it, then by its room.</summary>
internal sealed class AimSearch
{
    public const double LowestAxisDeg = -10;
    public const double HighestAxisDeg = 85; // a head that points higher has lost its azimuth

    private const int MostChecks = 120; // of headings of one altitude against a skyline that is not level

    private readonly FramingScore score;
    private readonly AzimuthSweep sweep;
    private readonly ForegroundBand ground;
    private readonly Heading? start;
    private readonly double rollDeg;

    /// <param name="task">The sequence.</param>
    /// <param name="start">Where a move starts; null: the camera stands still.</param>
    /// <param name="rollDeg">Of the headings tried.</param>
    public AimSearch(FramingTask task, Heading? start, double rollDeg)
    {
        (this.start, this.rollDeg) = (start, rollDeg);
        score = new FramingScore(task);
        sweep = new AzimuthSweep(task, score, start, rollDeg);
        ground = new ForegroundBand(task);
    }

    /// <summary>Shots looked at.</summary>
    public int Shots => score.Shots;

    /// <summary>The ground fills as much of the frame as wished.</summary>
    public bool Holds(Heading heading) => ground.Holds(heading);

    /// <summary>The best heading that shows as much ground as wished; null: none was found. With the shots looked at that have the subject in.</summary>
    public (Heading Heading, int ShotsIn)? WithForeground()
    {
        if (ground.IsOpen) return null;
        var (low, high) = ground.Widest(rollDeg);
        var altitudes = Altitudes(Math.Max(low, LowestAxisDeg), Math.Min(high, HighestAxisDeg), 1);
        var middle = (low + high) / 2;
        altitudes.Sort((one, other) => Math.Abs(one - middle).CompareTo(Math.Abs(other - middle)));
        return Best(altitudes, isComposed: true);
    }

    /// <summary>The best heading of all, with the shots looked at that have the subject in.</summary>
    public (Heading Heading, int ShotsIn) Free() =>
        Best(Altitudes(LowestAxisDeg, HighestAxisDeg, 2), isComposed: false) ?? (Held(new Heading(0, 0, rollDeg)), 0);

    // In steps of whole degrees where they are many, of half ones where they are few.
    private static List<double> Altitudes(double low, double high, double step)
    {
        if (high - low < 4) step = 0.5;
        var altitudes = new List<double>();
        for (var altitude = Math.Ceiling(low / step) * step; altitude <= high; altitude += step) altitudes.Add(altitude);
        return altitudes;
    }

    // The main point alone tells at most how many shots an altitude can have; the altitudes that promise most are looked at in full first.
    private (Heading Heading, int ShotsIn)? Best(List<double> altitudes, bool isComposed)
    {
        (Heading Heading, int ShotsIn)? best = null;
        var promises = new List<(double Altitude, int Most)>();
        foreach (var altitude in isComposed ? altitudes : Promising(altitudes))
        {
            var shots = sweep.ShotsIn(altitude, isMainAlone: true);
            var most = Most(shots);
            promises.Add((altitude, most));
            if (most < score.Shots || (isComposed && !ground.IsLevel)) continue;
            // All shots cannot be bettered, and where the main point stands in the middle the rest of the subject mostly is in too.
            var middle = Held(new Heading(MiddleOfLongest(shots, most) / 2.0, altitude, rollDeg));
            if (FramingScore.Whole(score.Of(start ?? middle, middle)) < most || (isComposed && !ground.Holds(middle))) continue;
            best = (middle, most);
            break;
        }

        if (best is null)
        {
            promises.Sort((one, other) => other.Most.CompareTo(one.Most));
            var least = (int)Math.Ceiling((1 - FramingAdvice.MostForForeground) * promises.Select(promise => promise.Most).FirstOrDefault());
            foreach (var (altitude, most) in promises)
            {
                if (most <= (best?.ShotsIn ?? 0)) break;
                if (BestAt(altitude, isComposed, best?.ShotsIn ?? 0, isComposed ? Math.Min(least, most) : 1) is { } found) best = found;
            }
        }

        if (best is not { } reached) return null;
        var heading = Centred(reached.Heading, heading => !isComposed || ground.Holds(heading));
        return (heading, FramingScore.Whole(score.Of(start ?? heading, heading)));
    }

    // Every fourth altitude by about eight of the shots, and from them what lies about the best.
    private List<double> Promising(List<double> altitudes)
    {
        const int every = 4;
        const int roughly = 8;
        if (altitudes.Count <= every) return altitudes;
        var stride = Math.Max(1, score.Shots / roughly);
        var rough = new List<(int Index, int Most)>();
        for (var i = every / 2; i < altitudes.Count; i += every) rough.Add((i, Most(sweep.ShotsIn(altitudes[i], isMainAlone: true, stride))));
        var most = rough.Max(tried => tried.Most);
        var best = rough.FindAll(tried => tried.Most == most);
        // Of many equals the middle ones: there is most room about them.
        if (best.Count > 3) best = best.GetRange((best.Count - 3) / 2, 3);
        var middle = best[best.Count / 2].Index;
        return
        [
            .. Enumerable.Range(0, altitudes.Count).Where(index => best.Exists(tried => Math.Abs(tried.Index - index) <= every))
                .OrderBy(index => Math.Abs(index - middle)).Select(index => altitudes[index]),
        ];
    }

    // The middle of the longest stretch of azimuths with most shots; towards a skyline that is not level, of those with ground as wished.
    private (Heading Heading, int ShotsIn)? BestAt(double altitude, bool isComposed, int above, int least)
    {
        var shots = sweep.ShotsIn(altitude, isMainAlone: false);
        var near = new List<int>();
        for (var wanted = Most(shots); wanted > above && wanted >= least; wanted--)
        {
            if (!isComposed || ground.IsLevel)
            {
                var heading = Held(new Heading(MiddleOfLongest(shots, wanted) / 2.0, altitude, rollDeg));
                return isComposed && !ground.Holds(heading) ? null : (heading, wanted);
            }

            near.Clear();
            for (var bin = 0; bin < AzimuthSweep.Bins; bin++)
            {
                if (shots[bin] == wanted && ground.IsNear(bin / 2.0, altitude, rollDeg)) near.Add(bin);
            }

            for (var checks = 0; checks < Math.Min(near.Count, MostChecks); checks++)
            {
                var heading = new Heading(near[checks * near.Count / Math.Min(near.Count, MostChecks)] / 2.0, altitude, rollDeg);
                if (ground.Holds(heading)) return (heading, wanted);
            }
        }

        return null;
    }

    private static int Most(ReadOnlySpan<int> shots)
    {
        var most = 0;
        foreach (var count in shots) most = Math.Max(most, count);
        return most;
    }

    private static int MiddleOfLongest(ReadOnlySpan<int> shots, int wanted)
    {
        var (bestStart, bestLength, length) = (0, 0, 0);
        for (var i = 0; i < 2 * AzimuthSweep.Bins; i++)
        {
            length = shots[i % AzimuthSweep.Bins] == wanted ? length + 1 : 0;
            if (length > bestLength && length <= AzimuthSweep.Bins) (bestStart, bestLength) = (i - length + 1, length);
        }

        return (bestStart + (bestLength - 1) / 2) % AzimuthSweep.Bins;
    }

    // Steps to the better neighbour as long as there is one, then by half as much: as many shots, farther from the edges.
    private Heading Centred(Heading from, Func<Heading, bool> accepts)
    {
        var (best, most) = (from, score.Of(start ?? from, from));
        for (var step = 2.0; step >= 0.5; step /= 2)
        {
            for (var round = 0; round < 4; round++)
            {
                var (here, before) = (best, most);
                Try(here with { AzimuthDeg = here.AzimuthDeg + step });
                Try(here with { AzimuthDeg = here.AzimuthDeg - step });
                Try(here with { AltitudeDeg = here.AltitudeDeg + step });
                Try(here with { AltitudeDeg = here.AltitudeDeg - step });
                if (most <= before) break;
            }
        }

        return best;

        void Try(Heading wanted)
        {
            var heading = Held(wanted);
            var found = score.Of(start ?? heading, heading);
            if (found > most && accepts(heading)) (best, most) = (heading, found);
        }
    }

    private static Heading Held(Heading heading)
    {
        var azimuth = Math.Round(heading.AzimuthDeg * 2) / 2;
        var altitude = Math.Round(heading.AltitudeDeg * 2) / 2;
        return heading with { AzimuthDeg = azimuth - 360 * Math.Floor(azimuth / 360), AltitudeDeg = Math.Clamp(altitude, LowestAxisDeg, HighestAxisDeg) };
    }
}

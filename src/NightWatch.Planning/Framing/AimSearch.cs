using NightWatch.Planning.Camera;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Places;

namespace NightWatch.Planning.Framing;

/// <summary>
/// Looks for the heading that has the subject in in most shots, or in those worth most: all azimuths of every altitude that may hold it,
/// then by its room.
/// </summary>
internal sealed class AimSearch
{
    public const double LowestAxisDeg = -10;
    public const double HighestAxisDeg = 85; // a head that points higher has lost its azimuth

    private const int MostSwept = 2; // altitudes looked at in full
    private const int MostChecks = 96; // of headings of one altitude against a skyline that is not level

    private readonly FramingScore score;
    private readonly AzimuthSweep sweep;
    private readonly ForegroundBand ground;
    private readonly Heading? start;
    private readonly double rollDeg;
    private readonly double halfDiagonalDeg;
    private readonly Horizontal likely; // where a guess points: the subject half-way, of a move at its end

    /// <param name="task">The sequence.</param>
    /// <param name="start">Where a move starts; null: the camera stands still.</param>
    /// <param name="rollDeg">Of the headings tried.</param>
    public AimSearch(FramingTask task, Heading? start, double rollDeg)
    {
        (this.start, this.rollDeg) = (start, rollDeg);
        score = new FramingScore(task, start is null ? FramingScore.OfStill : FramingScore.OfMove);
        sweep = new AzimuthSweep(task, score, start, rollDeg);
        ground = new ForegroundBand(task);
        halfDiagonalDeg =
            Frame.FieldDeg(
                Math.Sqrt(task.Frame.WidthMm * task.Frame.WidthMm + task.Frame.HeightMm * task.Frame.HeightMm),
                task.Frame.FocalLengthMm) / 2;
        likely = score.Subject(start is null ? score.Shots / 2 : score.Shots - 1);
    }

    /// <summary>The ground fills as much of the frame as wished.</summary>
    public bool Holds(Heading heading) => ground.Holds(heading);

    /// <summary>
    /// The best heading of all, and the best that shows as much ground as wished where that costs no more than a share of the shots.
    /// </summary>
    /// <param name="mostLost">That share.</param>
    /// <returns>No composed one: none was found. No free one: the composed one is good enough.</returns>
    public (Heading? Composed, Heading? Free) Best(double mostLost)
    {
        if (ground.IsOpen) return (null, Free().Heading);
        var (low, high) = ground.Widest(rollDeg);
        foreach (var altitude in (ReadOnlySpan<double>)[(low + high) / 2, high, low])
        {
            if (Whole(new Heading(likely.AzimuthDeg, altitude, rollDeg), ground.Holds) is { } held) return (held, null);
        }

        // No heading with that much ground reaches higher than this; where the subject stands above it too long, only the free one is
        // looked for.
        var reach = score.ShotsBelow(Math.Max(high, start?.AltitudeDeg ?? high) + halfDiagonalDeg);
        (Heading Heading, int ShotsIn)? free = reach < Least(score.Full) ? Free() : null;
        if (free is { } known && reach < Least(known.ShotsIn)) return (null, WithHorizon(known));

        var promises = Promises(Altitudes(Math.Max(low, LowestAxisDeg), Math.Min(high, HighestAxisDeg), 1), isEvery: !ground.IsLevel);
        if (promises.Count == 0 || promises[0].Most < Least(score.Full)) free ??= Free();
        var composed = Best(promises, isComposed: true, free is null ? 1 : Least(free.Value.ShotsIn));
        if (composed is { } whole && whole.ShotsIn >= Least(score.Full)) return (whole.Heading, null);
        free ??= Free();
        return composed is { } kept && kept.ShotsIn >= Least(free.Value.ShotsIn) ? (kept.Heading, null) : (null, WithHorizon(free.Value));

        int Least(int shots) => Math.Max(1, (int)Math.Ceiling((1 - mostLost) * shots));
    }

    private (Heading Heading, int ShotsIn) Free()
    {
        if (Whole(new Heading(likely.AzimuthDeg, likely.AltitudeDeg, rollDeg), _ => true) is { } whole) return (whole, score.Full);
        return Best(Promises(Altitudes(LowestAxisDeg, HighestAxisDeg, 2), isEvery: false), isComposed: false, least: 1)
            ?? (Held(new Heading(0, 0, rollDeg)), 0);
    }

    // Where the ground wished cannot be had, at least the horizon in sight: looking lower as long as that loses no shot.
    private Heading WithHorizon((Heading Heading, int ShotsIn) free)
    {
        if (ground.IsInSight(free.Heading)) return free.Heading;
        for (var altitude = free.Heading.AltitudeDeg - 1; altitude >= LowestAxisDeg; altitude--)
        {
            var lower = free.Heading with { AltitudeDeg = altitude };
            if (FramingScore.Whole(score.Of(start ?? lower, lower)) < free.ShotsIn) break;
            if (ground.IsInSight(lower)) return lower;
        }

        return free.Heading;
    }

    // A first guess that holds all shots spares the search: it is centred, and no other holds more.
    private Heading? Whole(Heading guess, Func<Heading, bool> accepts)
    {
        var heading = Held(guess);
        return FramingScore.Whole(score.Of(start ?? heading, heading)) == score.Full && accepts(heading) ? Centred(heading, accepts) : null;
    }

    // In steps of whole degrees where they are many, of half ones where they are few.
    private static List<double> Altitudes(double low, double high, double step)
    {
        if (high - low < 4) step = 0.5;
        var altitudes = new List<double>();
        for (var altitude = Math.Ceiling(low / step) * step; altitude <= high; altitude += step) altitudes.Add(altitude);
        return altitudes;
    }

    // The main point alone tells at most how many shots an altitude can have; those that promise most are looked at in full first.
    private (Heading Heading, int ShotsIn)? Best(List<(double Altitude, int Most, int Middle)> promises, bool isComposed, int least)
    {
        (Heading Heading, int ShotsIn)? best = null;
        foreach (var promise in promises)
        {
            if (promise.Most <= (best?.ShotsIn ?? 0)) break;
            if (InTheMiddle(promise, isComposed) is { } found && found.ShotsIn > (best?.ShotsIn ?? 0)) best = found;
        }

        var swept = 0;
        foreach (var promise in promises)
        {
            if (promise.Most < least || promise.Most <= (best?.ShotsIn ?? 0) || (swept++ >= MostSwept && (!isComposed || ground.IsLevel)))
                break;
            best = BestAt(promise.Altitude, isComposed, best?.ShotsIn ?? 0, least) ?? best;
        }

        if (best is not { } reached) return null;
        var heading = Centred(reached.Heading, heading => !isComposed || ground.Holds(heading));
        return (heading, FramingScore.Whole(score.Of(start ?? heading, heading)));
    }

    // Where the main point stands in the middle, the rest of the subject mostly is in too.
    private (Heading Heading, int ShotsIn)? InTheMiddle((double Altitude, int Most, int Middle) promise, bool isComposed)
    {
        var heading = Held(new Heading(promise.Middle / 2.0, promise.Altitude, rollDeg));
        return !isComposed || ground.Holds(heading) ? (heading, FramingScore.Whole(score.Of(start ?? heading, heading))) : null;
    }

    // Every fourth altitude by about eight of the shots; from the best of them in ever smaller steps to where no neighbour promises more.
    private List<(double Altitude, int Most, int Middle)> Promises(List<double> altitudes, bool isEvery)
    {
        const int every = 4;
        var known = new Dictionary<int, (double Altitude, int Most, int Middle)>();
        if (isEvery || altitudes.Count <= 2 * every)
        {
            for (var index = 0; index < altitudes.Count; index++) Promise(index);
        }
        else
        {
            // Where shots count by their worth a few do not stand for the others.
            var stride = score.Full == score.Shots ? Math.Max(1, score.Shots / 8) : 2;
            var rough = new List<(int Index, int Most)>();
            for (var i = every / 2; i < altitudes.Count; i += every)
                rough.Add((i, Most(sweep.ShotsIn(altitudes[i], isMainAlone: true, stride))));
            var most = rough.Max(tried => tried.Most);
            var best = rough.FindAll(tried => tried.Most == most);
            foreach (var from in new[] { best[best.Count / 2].Index, best[0].Index, best[^1].Index }.Distinct())
            {
                if (Promise(from) == score.Full) break;
                var here = from;
                for (var step = every / 2; step >= 1; step /= 2)
                {
                    while (true)
                    {
                        var (down, up) = (Math.Max(here - step, 0), Math.Min(here + step, altitudes.Count - 1));
                        var next = Promise(down) >= Promise(up) ? down : up;
                        if (Promise(next) <= Promise(here)) break;
                        here = next;
                    }
                }
            }
        }

        return [.. known.Values.OrderByDescending(promise => promise.Most)];

        int Promise(int index)
        {
            if (known.TryGetValue(index, out var told)) return told.Most;
            var shots = sweep.ShotsIn(altitudes[index], isMainAlone: true);
            var most = Most(shots);
            known.Add(index, (altitudes[index], most, MiddleOfLongest(shots, most)));
            return most;
        }
    }

    // The middle of the longest stretch of azimuths with most shots; towards a skyline that is not level, of those with ground as wished.
    private (Heading Heading, int ShotsIn)? BestAt(double altitude, bool isComposed, int above, int least)
    {
        var shots = sweep.ShotsIn(altitude, isMainAlone: false);
        for (var wanted = Most(shots); wanted > above && wanted >= least; wanted--)
        {
            if (!isComposed || ground.IsLevel)
            {
                var heading = Held(new Heading(MiddleOfLongest(shots, wanted) / 2.0, altitude, rollDeg));
                return isComposed && !ground.Holds(heading) ? null : (heading, wanted);
            }

            var near = new List<(int Bin, double Off)>();
            for (var bin = 0; bin < AzimuthSweep.Bins; bin++)
            {
                if (shots[bin] == wanted && ground.OffDeg(bin / 2.0, altitude, rollDeg) is var off && double.IsFinite(off))
                    near.Add((bin, off));
            }

            foreach (var (bin, _) in near.OrderBy(tried => tried.Off).Take(MostChecks))
            {
                var heading = new Heading(bin / 2.0, altitude, rollDeg);
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
        var lead = 0; // a stretch at the first azimuths goes on from the last ones
        while (lead < shots.Length && shots[lead] == wanted) lead++;
        if (lead == shots.Length) return 0;
        var (start, longest, length) = (0, 0, 0);
        for (var i = lead; i < shots.Length; i++)
        {
            length = shots[i] == wanted ? length + 1 : 0;
            if (length > longest) (start, longest) = (i - length + 1, length);
        }

        if (length + lead > longest) (start, longest) = (shots.Length - length, length + lead);
        return (start + (longest - 1) / 2) % shots.Length;
    }

    // Steps to the better neighbour as long as there is one, then by half as much: as many shots, farther from the edges.
    private Heading Centred(Heading from, Func<Heading, bool> accepts)
    {
        var (best, most) = (from, score.Of(start ?? from, from));
        for (var step = 2.0; step >= 0.5; step /= 2)
        {
            for (var round = 0; round < 2; round++)
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
        return heading with
        {
            AzimuthDeg = azimuth - 360 * Math.Floor(azimuth / 360),
            AltitudeDeg = Math.Clamp(altitude, LowestAxisDeg, HighestAxisDeg),
        };
    }
}

using NightWatch.Planning.Camera;
using NightWatch.Planning.Watches;

namespace NightWatch.Planning.Framing;

/// <summary>Looks for the heading that has the subject in in most shots: roughly all about the subject's way, then step by step from the best found.</summary>
internal sealed class AimSearch
{
    public const double LowestAxisDeg = -10;
    public const double HighestAxisDeg = 85; // a head that points higher has lost its azimuth

    private const int Anchors = 8; // shots about whose subject the camera is tried
    private const int Climbed = 6; // of those tries, led on roughly
    private const int Refined = 3; // of those, led on by all shots looked at
    private static readonly double[] offsets = [-0.8, -0.4, 0, 0.4, 0.8]; // of half the smaller field

    private static readonly (int Across, int Up)[] neighbours = [(-1, 0), (1, 0), (0, -1), (0, 1), (-1, -1), (1, 1), (-1, 1), (1, -1)];

    private readonly FramingScore score;
    private readonly ForegroundBand ground;
    private readonly Heading? start;
    private readonly double rollDeg;
    private readonly double halfDeg;

    /// <param name="task">The sequence.</param>
    /// <param name="start">Where a move starts; null: the camera stands still.</param>
    /// <param name="rollDeg">Of the headings tried.</param>
    public AimSearch(FramingTask task, Heading? start, double rollDeg)
    {
        (this.start, this.rollDeg) = (start, rollDeg);
        score = new FramingScore(task);
        ground = new ForegroundBand(task);
        halfDeg = Math.Min(task.Frame.HorizontalFieldDeg, task.Frame.VerticalFieldDeg) / 2;
    }

    /// <summary>Shots looked at.</summary>
    public int Shots => score.Shots;

    /// <summary>The ground fills as much of the frame as wished.</summary>
    public bool Holds(Heading heading) => ground.Holds(heading);

    /// <summary>The best heading that shows as much ground as wished; null: none was found. With the shots looked at that have the subject in.</summary>
    public (Heading Heading, int ShotsIn)? WithForeground()
    {
        if (ground.IsOpen) return null;
        var tries = new List<Heading>(3 * Anchors * offsets.Length);
        foreach (var (azimuth, altitude, done) in AnchorsOf())
        {
            foreach (var across in offsets)
            {
                var towards = Reached(azimuth + across * halfDeg / Math.Max(Math.Cos(altitude * Math.PI / 180), 0.2), start?.AzimuthDeg, done);
                var (low, high) = ground.About(towards, rollDeg);
                tries.Add(new Heading(towards, high, rollDeg));
                tries.Add(new Heading(towards, (low + high) / 2, rollDeg));
                tries.Add(new Heading(towards, low, rollDeg));
            }
        }

        return Best(tries, ground.Holds);
    }

    /// <summary>The best heading of all, with the shots looked at that have the subject in.</summary>
    public (Heading Heading, int ShotsIn) Free()
    {
        var tries = new List<Heading>(Anchors * offsets.Length * offsets.Length);
        foreach (var (azimuth, altitude, done) in AnchorsOf())
        {
            foreach (var across in offsets)
            {
                var towards = Reached(azimuth + across * halfDeg / Math.Max(Math.Cos(altitude * Math.PI / 180), 0.2), start?.AzimuthDeg, done);
                foreach (var up in offsets) tries.Add(new Heading(towards, Reached(altitude + up * halfDeg, start?.AltitudeDeg, done), rollDeg));
            }
        }

        return Best(tries, _ => true)!.Value;
    }

    // Where the subject stands in some of the shots, and how much of the move is done there; early in a move its end says little.
    private IEnumerable<(double AzimuthDeg, double AltitudeDeg, double Done)> AnchorsOf()
    {
        var count = Math.Min(Anchors, score.Shots);
        for (var k = 0; k < count; k++)
        {
            var shot = MoveFraming.ShotOf(k, count, score.Shots);
            var done = start is null ? 1 : score.Done(shot);
            if (done < 0.25 && k < count - 1) continue;
            var subject = score.Subject(shot);
            yield return (subject.AzimuthDeg, subject.AltitudeDeg, done <= 0 ? 1 : done);
        }
    }

    // The end of a move that has come to a place when a share of it is done.
    private static double Reached(double placeDeg, double? startDeg, double done)
    {
        if (startDeg is not { } from) return placeDeg;
        var way = placeDeg - from;
        way -= 360 * Math.Round(way / 360);
        return from + way / done;
    }

    private (Heading Heading, int ShotsIn)? Best(List<Heading> tries, Func<Heading, bool> accepts)
    {
        var ways = tries.ConvertAll(Held).Distinct().Select(heading => (Heading: heading, Rough: score.Roughly(start ?? heading, heading)))
            .OrderByDescending(way => way.Rough);
        var led = new List<Heading>(Climbed);
        var reached = new List<(Heading Heading, double Rough)>(Climbed);
        foreach (var (heading, _) in ways)
        {
            if (led.Exists(other => IsNear(other, heading)) || !accepts(heading)) continue;
            led.Add(heading);
            reached.Add(Walk(heading, tried => score.Roughly(start ?? tried, tried), Math.Clamp(Math.Round(halfDeg), 1, 8) / 2, 0.5, accepts));
            if (led.Count == Climbed) break;
        }

        (Heading Heading, double Score)? best = null;
        foreach (var (heading, _) in reached.OrderByDescending(way => way.Rough).Take(Refined))
        {
            var refined = Refine(heading, accepts);
            if (best is null || refined.Score > best.Value.Score) best = refined;
            if (FramingScore.Whole(best.Value.Score) == score.Shots) break;
        }

        return best is { } found ? (found.Heading, FramingScore.Whole(found.Score)) : null;
    }

    private bool IsNear(Heading a, Heading b)
    {
        var apart = a.AzimuthDeg - b.AzimuthDeg;
        apart -= 360 * Math.Round(apart / 360);
        return Math.Abs(apart) < halfDeg / 2 && Math.Abs(a.AltitudeDeg - b.AltitudeDeg) < halfDeg / 2;
    }

    private (Heading Heading, double Score) Refine(Heading from, Func<Heading, bool> accepts)
    {
        var lead = Walk(from, heading => score.Judge(start ?? heading, heading).Lead, 2, 1, accepts).Heading;
        return Walk(lead, heading => score.Of(start ?? heading, heading), 2, 0.5, accepts);
    }

    // Steps to the better neighbour as long as there is one, then by half as much.
    private static (Heading Heading, double Score) Walk(Heading from, Func<Heading, double> value, double step, double least, Func<Heading, bool> accepts)
    {
        var (best, most) = (from, value(from));
        for (; step >= least; step /= 2)
        {
            for (var round = 0; round < 12; round++)
            {
                var (here, before) = (best, most);
                foreach (var (across, up) in neighbours)
                {
                    var heading = Held(here with { AzimuthDeg = here.AzimuthDeg + across * step, AltitudeDeg = here.AltitudeDeg + up * step });
                    var found = value(heading);
                    if (found > most && accepts(heading)) (best, most) = (heading, found);
                }

                if (most <= before) break;
            }
        }

        return (best, most);
    }

    private static Heading Held(Heading heading)
    {
        var azimuth = Math.Round(heading.AzimuthDeg * 2) / 2;
        var altitude = Math.Round(heading.AltitudeDeg * 2) / 2;
        return heading with { AzimuthDeg = azimuth - 360 * Math.Floor(azimuth / 360), AltitudeDeg = Math.Clamp(altitude, LowestAxisDeg, HighestAxisDeg) };
    }
}

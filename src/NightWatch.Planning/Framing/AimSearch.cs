using NightWatch.Planning.Camera;
using NightWatch.Planning.Watches;

namespace NightWatch.Planning.Framing;

/// <summary>Looks for the heading that has the subject in in most shots: roughly all about the subject's way, then step by step from the best found.</summary>
internal sealed class AimSearch
{
    public const double LowestAxisDeg = -10;
    public const double HighestAxisDeg = 85; // a head that points higher has lost its azimuth

    private const int RoughStride = 4;
    private const int Anchors = 8; // shots about whose subject the camera is tried
    private const int Looked = 10; // of the rough ones, looked at in full
    private const int Climbed = 2; // of those, led on
    private static readonly double[] offsets = [-0.8, -0.4, 0, 0.4, 0.8]; // of half the smaller field

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
        var stride = score.Shots > RoughStride * Anchors / 2 ? RoughStride : 1;
        var ways = tries.ConvertAll(Held).Distinct().Select(heading => (Heading: heading, Rough: score.Roughly(start ?? heading, heading, stride)))
            .OrderByDescending(way => way.Rough).Select(way => way.Heading).Where(accepts).Take(Looked)
            .Select(heading => (Heading: heading, Score: score.Of(start ?? heading, heading)))
            .OrderByDescending(way => way.Score).Take(Climbed).ToList();
        if (ways.Count == 0) return null;
        var best = ways.Select(way => Climb(way.Heading, way.Score, accepts)).MaxBy(way => way.Score);
        return (best.Heading, FramingScore.Whole(best.Score));
    }

    // Steps to the better neighbour, a quarter of the field at first, half a degree at last.
    private (Heading Heading, double Score) Climb(Heading from, double reached, Func<Heading, bool> accepts)
    {
        var (best, bestScore) = (from, reached);
        for (var step = Math.Clamp(Math.Round(halfDeg), 1, 8) / 2; step > 0.25; step /= 2)
        {
            for (var round = 0; round < 12; round++)
            {
                var (here, before) = (best, bestScore);
                for (var across = -1; across <= 1; across++)
                {
                    for (var up = -1; up <= 1; up++)
                    {
                        if (across != 0 || up != 0) Try(here with { AzimuthDeg = here.AzimuthDeg + across * step, AltitudeDeg = here.AltitudeDeg + up * step });
                    }
                }

                if (bestScore <= before) break;
            }
        }

        return (best, bestScore);

        void Try(Heading wanted)
        {
            var heading = Held(wanted);
            var found = score.Of(start ?? heading, heading);
            if (found > bestScore && accepts(heading)) (best, bestScore) = (heading, found);
        }
    }

    private static Heading Held(Heading heading)
    {
        var azimuth = Math.Round(heading.AzimuthDeg * 2) / 2;
        var altitude = Math.Round(heading.AltitudeDeg * 2) / 2;
        return heading with { AzimuthDeg = azimuth - 360 * Math.Floor(azimuth / 360), AltitudeDeg = Math.Clamp(altitude, LowestAxisDeg, HighestAxisDeg) };
    }
}

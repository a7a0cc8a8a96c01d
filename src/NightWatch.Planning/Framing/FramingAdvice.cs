using NightWatch.Planning.Watches;

namespace NightWatch.Planning.Framing;

/// <summary>How to keep the subject in the frame longest.</summary>
public static class FramingAdvice
{
    private const double LowestAxisDeg = -10;
    private const double HighestAxisDeg = 85;

    /// <summary>The heading at the last frame that keeps the subject in the frame in most shots, then farthest from the edges.</summary>
    /// <param name="task">The sequence; its start heading and curve are kept.</param>
    /// <returns>Rounded to half a degree.</returns>
    public static Heading BestEnd(FramingTask task)
    {
        var from = task.Points[0].At(task.FirstShotS);
        var to = task.Points[0].At(task.FirstShotS + (task.Shots - 1) * task.IntervalS);
        var (start, end) = (task.Move.Start, task.Move.End);
        var way = to.AzimuthDeg - from.AzimuthDeg;
        way -= 360 * Math.Round(way / 360);
        var along = new Heading(start.AzimuthDeg + way, start.AltitudeDeg + to.AltitudeDeg - from.AltitudeDeg, end.RollDeg);
        return Climb(new FramingScore(task), [end, along, new Heading(to.AzimuthDeg, to.AltitudeDeg, end.RollDeg)], start);
    }

    /// <summary>The one heading that, held through the sequence, keeps the subject in the frame in most shots.</summary>
    /// <param name="task">The sequence; its move is ignored but for the roll at its start.</param>
    /// <returns>Rounded to half a degree.</returns>
    public static Heading BestStill(FramingTask task)
    {
        var middle = task.Points[0].At(task.FirstShotS + (task.Shots - 1) * task.IntervalS / 2);
        return Climb(new FramingScore(task), [new Heading(middle.AzimuthDeg, middle.AltitudeDeg, task.Move.Start.RollDeg)], start: null);
    }

    /// <summary>The start of the sequence, within bounds, with the subject in the frame in most shots; the earliest of equals.</summary>
    /// <param name="task">The sequence.</param>
    /// <param name="earliestS">Earliest start of the first frame, seconds on the tracks' clock.</param>
    /// <param name="latestS">Latest start of the first frame.</param>
    /// <returns>Seconds on the tracks' clock, a whole number of five minutes after <paramref name="earliestS"/>.</returns>
    public static double BestStartS(FramingTask task, double earliestS, double latestS)
    {
        const double stepS = 300;
        var (best, most) = (earliestS, -1);
        for (var start = earliestS; start <= latestS; start += stepS)
        {
            var score = new FramingScore(task with { FirstShotS = start });
            var inside = score.ShotsIn(task.Move.Start, task.Move.End);
            if (inside > most) (best, most) = (start, inside);
            if (inside == score.Shots) break;
        }

        return best;
    }

    // Steps to the better neighbour, 8 degrees at first, half a degree at last. Without a start the camera stands still.
    private static Heading Climb(FramingScore score, ReadOnlySpan<Heading> tries, Heading? start)
    {
        var best = Held(tries[0]);
        var bestScore = double.NegativeInfinity;
        foreach (var heading in tries) Try(heading);
        for (var step = 8.0; step >= 0.5; step /= 2)
        {
            for (var round = 0; round < 12; round++)
            {
                var (here, before) = (best, bestScore);
                Try(here with { AzimuthDeg = here.AzimuthDeg + step });
                Try(here with { AzimuthDeg = here.AzimuthDeg - step });
                Try(here with { AltitudeDeg = here.AltitudeDeg + step });
                Try(here with { AltitudeDeg = here.AltitudeDeg - step });
                if (bestScore <= before) break;
            }
        }

        return best;

        void Try(Heading wanted)
        {
            var heading = Held(wanted);
            var reached = score.Of(start ?? heading, heading);
            if (reached > bestScore) (best, bestScore) = (heading, reached);
        }
    }

    private static Heading Held(Heading heading)
    {
        var azimuth = Math.Round(heading.AzimuthDeg * 2) / 2;
        var altitude = Math.Round(heading.AltitudeDeg * 2) / 2;
        return heading with { AzimuthDeg = azimuth - 360 * Math.Floor(azimuth / 360), AltitudeDeg = Math.Clamp(altitude, LowestAxisDeg, HighestAxisDeg) };
    }
}

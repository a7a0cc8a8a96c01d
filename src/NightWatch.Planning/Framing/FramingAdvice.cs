using NightWatch.Planning.Watches;

namespace NightWatch.Planning.Framing;

/// <summary>How to keep the subject in the frame longest.</summary>
public static class FramingAdvice
{
    private const int Samples = 32;
    private const double LowestAxisDeg = -10;
    private const double HighestAxisDeg = 85;

    /// <summary>The heading at the last frame that keeps the subject in the frame in most shots, then farthest from the edges.</summary>
    /// <param name="task">The sequence; its start heading and curve are kept.</param>
    /// <returns>Rounded to half a degree.</returns>
    public static Heading BestEnd(FramingTask task)
    {
        var from = task.Points[0].At(task.FirstShotS);
        var to = task.Points[0].At(task.FirstShotS + (task.Shots - 1) * task.IntervalS);
        var start = task.Move.Start;
        var way = to.AzimuthDeg - from.AzimuthDeg;
        way -= 360 * Math.Round(way / 360);
        var along = new Heading(start.AzimuthDeg + way, start.AltitudeDeg + to.AltitudeDeg - from.AltitudeDeg, task.Move.End.RollDeg);
        return Climb(task, [task.Move.End, along, new Heading(to.AzimuthDeg, to.AltitudeDeg, task.Move.End.RollDeg)], (t, h) => t.Move with { End = h });
    }

    /// <summary>The one heading that, held through the sequence, keeps the subject in the frame in most shots.</summary>
    /// <param name="task">The sequence; its move is ignored but for the roll at its start.</param>
    /// <returns>Rounded to half a degree.</returns>
    public static Heading BestStill(FramingTask task)
    {
        var middle = task.Points[0].At(task.FirstShotS + (task.Shots - 1) * task.IntervalS / 2);
        return Climb(
            task,
            [new Heading(middle.AzimuthDeg, middle.AltitudeDeg, task.Move.Start.RollDeg)],
            (_, h) => new Move { Start = h, End = h });
    }

    /// <summary>The start of the sequence, within bounds, with the subject in the frame in most shots; the earliest of equals.</summary>
    /// <param name="task">The sequence.</param>
    /// <param name="earliestS">Earliest start of the first frame, seconds on the tracks' clock.</param>
    /// <param name="latestS">Latest start of the first frame.</param>
    /// <returns>Seconds on the tracks' clock, to five minutes after <paramref name="earliestS"/>.</returns>
    public static double BestStartS(FramingTask task, double earliestS, double latestS)
    {
        const double stepS = 300;
        var (best, bestScore) = (earliestS, double.NegativeInfinity);
        for (var start = earliestS; start <= latestS; start += stepS)
        {
            var score = Math.Round(Score(task with { FirstShotS = start }), 6);
            if (score > bestScore) (best, bestScore) = (start, score);
        }

        return best;
    }

    private static Heading Climb(FramingTask task, ReadOnlySpan<Heading> starts, Func<FramingTask, Heading, Move> moveTo)
    {
        var best = Held(starts[0]);
        var bestScore = ScoreAt(best);
        foreach (var start in starts) Try(Held(start));
        for (var step = 8.0; step >= 0.5; step /= 2)
        {
            for (var round = 0; round < 12; round++)
            {
                var before = bestScore;
                var here = best;
                Try(Held(here with { AzimuthDeg = here.AzimuthDeg + step }));
                Try(Held(here with { AzimuthDeg = here.AzimuthDeg - step }));
                Try(Held(here with { AltitudeDeg = here.AltitudeDeg + step }));
                Try(Held(here with { AltitudeDeg = here.AltitudeDeg - step }));
                if (bestScore <= before) break;
            }
        }

        return best;

        double ScoreAt(Heading heading) => Score(task with { Move = moveTo(task, heading) });

        void Try(Heading heading)
        {
            var score = ScoreAt(heading);
            if (score > bestScore) (best, bestScore) = (heading, score);
        }
    }

    private static Heading Held(Heading heading)
    {
        var azimuth = Math.Round(heading.AzimuthDeg * 2) / 2;
        var altitude = Math.Round(heading.AltitudeDeg * 2) / 2;
        return heading with { AzimuthDeg = azimuth - 360 * Math.Floor(azimuth / 360), AltitudeDeg = Math.Clamp(altitude, LowestAxisDeg, HighestAxisDeg) };
    }

    // Shots in the frame count first; the mean room breaks ties and leads the way where the subject is not in at all.
    private static double Score(FramingTask task)
    {
        var count = Math.Min(task.Shots, Samples);
        var (inside, room) = (0, 0.0);
        for (var i = 0; i < count; i++)
        {
            var sample = MoveFraming.At(task, MoveFraming.ShotOf(i, count, task.Shots));
            if (sample.IsIn) inside++;
            room += Math.Max(sample.Room, -5);
        }

        return inside + 0.1 * room / count;
    }
}

using NightWatch.Planning.Watches;

namespace NightWatch.Planning.Framing;

/// <summary>Where the camera should look.</summary>
/// <param name="Heading">Rounded to half a degree.</param>
/// <param name="KeepsForeground">The ground fills as much of the frame there as wished; false: the subject stands too high for it.</param>
public readonly record struct AdvisedHeading(Heading Heading, bool KeepsForeground);

/// <summary>How to keep the subject in the frame longest, over as much ground as wished.</summary>
public static class FramingAdvice
{
    /// <summary>
    /// Share of the shots that the ground in the frame may cost; engineering choice: as much as a loss that is told and is no need.
    /// </summary>
    public const double MostForForeground = 0.1;

    /// <summary>
    /// The heading at the last frame that keeps the subject in the frame in most shots, then farthest from the edges; of those with as much
    /// ground as wished wherever that costs no more than <see cref="MostForForeground"/> of the shots.
    /// </summary>
    /// <param name="task">The sequence; its start heading and curve are kept, and the roll of its end.</param>
    public static AdvisedHeading BestEnd(FramingTask task) => Best(new AimSearch(task, task.Move.Start, task.Move.End.RollDeg));

    /// <summary>The one heading that, held through the sequence, does the same.</summary>
    /// <param name="task">The sequence; its move is ignored but for the roll at its start.</param>
    public static AdvisedHeading BestStill(FramingTask task) => Best(new AimSearch(task, start: null, task.Move.Start.RollDeg));

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
            if (inside == score.Full) break;
        }

        return best;
    }

    private static AdvisedHeading Best(AimSearch search)
    {
        var (composed, free) = search.Best(MostForForeground);
        return composed is { } heading ? new(heading, KeepsForeground: true) : new(free!.Value, search.Holds(free.Value));
    }
}

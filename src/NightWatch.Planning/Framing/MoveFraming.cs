using NightWatch.Planning.Camera;
using NightWatch.Planning.Directions;

namespace NightWatch.Planning.Framing;

/// <summary>Follows the subject across the frame of a moving camera. The rail's slide shifts the foreground, never the stars.</summary>
public static class MoveFraming
{
    private const int Samples = 64;

    /// <summary>Evaluates a move. Frames between picked ones are looked at only where the subject enters or leaves.</summary>
    /// <exception cref="ArgumentException">No point, no shot, or no interval.</exception>
    public static FramingOutcome Along(FramingTask task)
    {
        if (task.Points.Count == 0) throw new ArgumentException("The subject needs at least one point.", nameof(task));
        if (task.Shots < 1) throw new ArgumentException("The sequence needs at least one shot.", nameof(task));
        if (!(task.IntervalS > 0)) throw new ArgumentException("The interval must be above 0 seconds.", nameof(task));

        var count = Math.Min(task.Shots, Samples);
        var path = new FrameSample[count];
        for (var i = 0; i < count; i++) path[i] = At(task, ShotOf(i, count, task.Shots));

        var shotsIn = path[0].IsIn ? 1 : 0;
        int? firstIn = path[0].IsIn ? 0 : null;
        int? firstLost = null;
        var least = path[0].Room;
        for (var i = 1; i < count; i++)
        {
            var (before, after) = (path[i - 1], path[i]);
            least = Math.Min(least, after.Room);
            if (before.IsIn == after.IsIn)
            {
                shotsIn += after.IsIn ? after.Shot - before.Shot : 0;
                continue;
            }

            var change = FirstLike(task, before.Shot, after);
            if (after.IsIn)
            {
                firstIn ??= change;
                shotsIn += after.Shot - change + 1;
            }
            else
            {
                firstLost ??= change;
                shotsIn += change - 1 - before.Shot;
            }
        }

        return new FramingOutcome
        {
            Path = path,
            ShotsIn = shotsIn,
            ShareIn = (double)shotsIn / task.Shots,
            FirstIn = firstIn,
            FirstLost = firstLost,
            LeastRoom = least,
        };
    }

    /// <summary>One frame of the sequence.</summary>
    /// <param name="task">The sequence.</param>
    /// <param name="shot">Number of the frame, from 0.</param>
    public static FrameSample At(FramingTask task, int shot)
    {
        var time = task.Shots > 1 ? (double)shot / (task.Shots - 1) : 0;
        var heading = MoveCurve.HeadingAt(task.Move, time);
        var pose = new CameraPose(heading, task.Frame.FocalLengthMm);
        var opens = task.FirstShotS + shot * task.IntervalS;
        var atStart = Math.SinCos(SiderealTrack.RadiansPerSecond * opens);
        var atEnd = Math.SinCos(SiderealTrack.RadiansPerSecond * (opens + task.ExposureS));
        var main = pose.Project(task.Points[0].After(atStart));
        var room = Math.Min(task.Frame.Room(main), task.Frame.Room(pose.Project(task.Points[0].After(atEnd))));
        var inside = room >= task.EdgeShare ? 1 : 0;
        for (var i = 1; i < task.Points.Count && room >= task.EdgeShare; i++)
        {
            if (task.Frame.Holds(pose.Project(task.Points[i].After(atStart)), task.EdgeShare)
                && task.Frame.Holds(pose.Project(task.Points[i].After(atEnd)), task.EdgeShare))
            {
                inside++;
            }
        }

        return new FrameSample(
            shot, opens, heading, main, room, room >= task.EdgeShare && inside >= task.LeastShareOfPoints * task.Points.Count);
    }

    internal static int ShotOf(int sample, int count, int shots) => count < 2 ? 0 : (int)((long)sample * (shots - 1) / (count - 1));

    private static int FirstLike(FramingTask task, int unlike, FrameSample like)
    {
        var found = like.Shot;
        while (found - unlike > 1)
        {
            var middle = (unlike + found) / 2;
            if (At(task, middle).IsIn == like.IsIn) found = middle;
            else unlike = middle;
        }

        return found;
    }
}

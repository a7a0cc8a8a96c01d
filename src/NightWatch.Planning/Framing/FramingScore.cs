using NightWatch.Planning.Camera;
using NightWatch.Planning.Directions;
using NightWatch.Planning.Watches;

namespace NightWatch.Planning.Framing;

/// <summary>Judges many moves of one sequence: the sky is worked out once, for at most 32 of its shots.</summary>
internal sealed class FramingScore
{
    private const int Samples = 32;
    private readonly FramingTask task;
    private readonly double[] done;
    private readonly Direction[] sky; // shot after shot, the points of the subject

    public FramingScore(FramingTask task)
    {
        this.task = task;
        Shots = Math.Min(task.Shots, Samples);
        done = new double[Shots];
        sky = new Direction[Shots * task.Points.Count];
        for (var i = 0; i < Shots; i++)
        {
            var shot = MoveFraming.ShotOf(i, Shots, task.Shots);
            done[i] = MoveCurve.Done(task.Shots > 1 ? (double)shot / (task.Shots - 1) : 0, task.Move.EaseIn, task.Move.EaseOut);
            var turn = Math.SinCos(SiderealTrack.RadiansPerSecond * (task.FirstShotS + shot * task.IntervalS));
            for (var p = 0; p < task.Points.Count; p++) sky[i * task.Points.Count + p] = task.Points[p].After(turn);
        }
    }

    /// <summary>Shots looked at.</summary>
    public int Shots { get; }

    /// <summary>Shots looked at that have the subject in.</summary>
    public int ShotsIn(Heading start, Heading end) => (int)Math.Floor(Of(start, end) + 0.5);

    /// <summary>Shots with the subject in; the mean room, below half a shot, breaks ties and leads the way where it is not in at all.</summary>
    public double Of(Heading start, Heading end)
    {
        var (inside, room) = (0, 0.0);
        for (var i = 0; i < Shots; i++)
        {
            var pose = new CameraPose(MoveCurve.Between(start, end, done[i]), task.Frame.FocalLengthMm);
            var points = sky.AsSpan(i * task.Points.Count, task.Points.Count);
            var main = task.Frame.Room(pose.Project(points[0]));
            room += Math.Max(main, -5);
            if (main < task.EdgeShare) continue;
            var held = 1;
            foreach (ref readonly var point in points[1..])
            {
                if (task.Frame.Holds(pose.Project(point), task.EdgeShare)) held++;
            }

            if (held >= task.LeastShareOfPoints * points.Length) inside++;
        }

        return inside + 0.09 * room / Shots;
    }
}

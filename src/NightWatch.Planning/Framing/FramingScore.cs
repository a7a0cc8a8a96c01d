using NightWatch.Planning.Camera;
using NightWatch.Planning.Directions;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Places;

namespace NightWatch.Planning.Framing;

/// <summary>Judges many moves of one sequence: the sky is worked out once, for some of its shots.</summary>
internal sealed class FramingScore
{
    /// <summary>Shots looked at for a camera that stands still.</summary>
    public const int OfStill = 32;

    /// <summary>For one that moves, which is dearer as it looks elsewhere in every shot.</summary>
    public const int OfMove = 16;

    private const int FullWeight = 16; // of a shot where shots differ in worth
    private const double RoomShare = 0.09; // of the mean room, which lies between -5 and 1: less than half a shot together
    private readonly FramingTask task;
    private readonly double[] done;
    private readonly int[] weight;
    private readonly Direction[] sky; // shot after shot, the points of the subject

    public FramingScore(FramingTask task, int samples = OfStill)
    {
        this.task = task;
        Shots = Math.Min(task.Shots, samples);
        done = new double[Shots];
        weight = new int[Shots];
        sky = new Direction[Shots * task.Points.Count];
        for (var i = 0; i < Shots; i++)
        {
            var shot = MoveFraming.ShotOf(i, Shots, task.Shots);
            weight[i] = task.WorthAt is { } worth ? (int)Math.Round(FullWeight * worth(task.FirstShotS + shot * task.IntervalS)) : 1;
            done[i] = MoveCurve.Done(task.Shots > 1 ? (double)shot / (task.Shots - 1) : 0, task.Move.EaseIn, task.Move.EaseOut);
            var turn = Math.SinCos(SiderealTrack.RadiansPerSecond * (task.FirstShotS + shot * task.IntervalS));
            for (var p = 0; p < task.Points.Count; p++) sky[i * task.Points.Count + p] = task.Points[p].After(turn);
        }

        Full = weight.Sum();
        if (Full > 0) return;
        Array.Fill(weight, 1); // where no frame is worth anything all are alike
        Full = Shots;
    }

    /// <summary>Shots looked at.</summary>
    public int Shots { get; }

    /// <summary>The score of a heading that has the subject in in all of them, without its room.</summary>
    public int Full { get; }

    /// <summary>What one of them counts: 1 where all are worth the same.</summary>
    public int Weight(int shot) => weight[shot];

    /// <summary>Share of the move done at one of them.</summary>
    public double Done(int shot) => done[shot];

    /// <summary>A point of the subject in one of them: shot after shot, the points of the subject.</summary>
    public Direction Sky(int place) => sky[place];

    /// <summary>Where the subject's main point stands in one of them.</summary>
    public Horizontal Subject(int shot) => sky[shot * task.Points.Count].ToHorizontal();

    /// <summary>What the shots looked at count in which the main point stands no higher than an altitude.</summary>
    public int ShotsBelow(double altitudeDeg)
    {
        var most = altitudeDeg >= 90 ? 1 : Math.Sin(altitudeDeg * Math.PI / 180);
        var below = 0;
        for (var i = 0; i < Shots; i++)
        {
            if (sky[i * task.Points.Count].Up <= most) below += weight[i];
        }

        return below;
    }

    /// <summary>What the shots looked at that have the subject in count together.</summary>
    public int ShotsIn(Heading start, Heading end) => Whole(Of(start, end));

    /// <summary>Shots in a score.</summary>
    public static int Whole(double score) => (int)Math.Floor(score + 0.5);

    /// <summary>What the shots with the subject in count together; the mean room, below half of 1, breaks ties.</summary>
    public double Of(Heading start, Heading end)
    {
        var isStill = start == end;
        var still = new CameraPose(end, task.Frame.FocalLengthMm);
        var (inside, room) = (0, 0.0);
        for (var i = 0; i < Shots; i++)
        {
            var pose = isStill ? still : new CameraPose(MoveCurve.Between(start, end, done[i]), task.Frame.FocalLengthMm);
            var main = Room(pose, i);
            room += Math.Max(main, -5);
            if (main >= task.EdgeShare && HasEnough(pose, sky.AsSpan(i * task.Points.Count, task.Points.Count))) inside += weight[i];
        }

        return inside + RoomShare * room / Shots;
    }

    private double Room(in CameraPose pose, int shot) => task.Frame.Room(pose.Project(sky[shot * task.Points.Count]));

    private bool HasEnough(in CameraPose pose, ReadOnlySpan<Direction> points)
    {
        var needed = task.LeastShareOfPoints * points.Length;
        var held = 1;
        for (var p = 1; p < points.Length && held < needed; p++)
        {
            if (task.Frame.Holds(pose.Project(points[p]), task.EdgeShare)) held++;
        }

        return held >= needed;
    }
}

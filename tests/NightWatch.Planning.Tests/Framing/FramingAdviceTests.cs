using NightWatch.Planning.Camera;
using NightWatch.Planning.Directions;
using NightWatch.Planning.Framing;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Places;

namespace NightWatch.Planning.Tests.Framing;

/// <summary>Advice against an exhaustive search over all headings of a coarse grid, on tasks made up by seed.</summary>
public sealed class FramingAdviceTests
{
    private const int Tasks = 300;
    private const int AzimuthStepDeg = 3;
    private const int AltitudeStepDeg = 2;

    public static TheoryData<int> Seeds { get; } = [.. Enumerable.Range(0, 6)];

    [Theory, MemberData(nameof(Seeds))]
    public void The_still_heading_is_as_good_as_any_of_the_grid(int seed)
    {
        foreach (var task in TasksOf(seed, Tasks / 6))
        {
            var advised = FramingAdvice.BestStill(task);
            var score = new FramingScore(task);
            HoldsAgainst(Grid(task, score, heading => (heading, heading)), task, advised, score.ShotsIn(advised.Heading, advised.Heading));
        }
    }

    /// <summary>As under a Moon that sets: the later a frame, the more it is worth.</summary>
    [Theory, MemberData(nameof(Seeds))]
    public void Where_frames_differ_in_worth_the_still_heading_is_worth_as_much_as_any_of_the_grid(int seed)
    {
        foreach (var plain in TasksOf(200 + seed, Tasks / 12))
        {
            var task = plain with { WorthAt = seconds => Math.Clamp((seconds - plain.FirstShotS) / (plain.Shots * plain.IntervalS), 0, 1) };
            var advised = FramingAdvice.BestStill(task);
            var score = new FramingScore(task);
            HoldsAgainst(Grid(task, score, heading => (heading, heading)), task, advised, score.ShotsIn(advised.Heading, advised.Heading));
        }
    }

    [Theory, MemberData(nameof(Seeds))]
    public void The_end_of_a_move_is_as_good_as_any_of_the_grid(int seed)
    {
        foreach (var task in TasksOf(100 + seed, Tasks / 12))
        {
            var start = task.Move.Start;
            var advised = FramingAdvice.BestEnd(task);
            var score = new FramingScore(task, FramingScore.OfMove);
            HoldsAgainst(Grid(task, score, heading => (start, heading)), task, advised, score.ShotsIn(start, advised.Heading));
        }
    }

    [Fact]
    public void A_subject_overhead_leaves_no_ground()
    {
        var task = TasksOf(7, 1)[0] with
        {
            Points = [new SiderealTrack(new Horizontal(80, 0), 89)],
            Foreground = new(0.2, 0.333),
            Horizon = HorizonProfile.Level,
        };
        Assert.False(FramingAdvice.BestStill(task).KeepsForeground);
    }

    // A 36 mm frame of 37 degrees up: a core that stands at 31 degrees is in with the horizon, and not with a fifth of ground.
    [Fact]
    public void Where_the_wish_cannot_be_had_the_horizon_stays_in_sight_if_no_shot_is_lost()
    {
        var task = TasksOf(9, 1)[0] with
        {
            Frame = new Frame(36, 24, 36),
            Move = new Move { Start = default, End = default },
            Points = [new SiderealTrack(new Horizontal(31, 180), 0)],
            Shots = 10,
            IntervalS = 30,
            Foreground = new(0.2, 0.333),
            Horizon = HorizonProfile.Level,
        };
        var advised = FramingAdvice.BestStill(task);
        Assert.False(advised.KeepsForeground);
        Assert.InRange(ShareOf(task, advised.Heading), 0.03, 0.2);
        Assert.Equal(10, new FramingScore(task).ShotsIn(advised.Heading, advised.Heading));
    }

    [Fact]
    public void A_wish_for_nothing_is_kept_everywhere() =>
        Assert.All(
            TasksOf(8, 10), task => Assert.True(FramingAdvice.BestStill(task with { Foreground = ForegroundWish.Any }).KeepsForeground));

    // In shots of those looked at, of which half a one is what the search calls equal.
    private static void HoldsAgainst(
        List<(Heading Heading, int ShotsIn, bool Keeps)> grid, FramingTask task, AdvisedHeading advised, int shotsIn)
    {
        var most = Math.Max(grid.Max(tried => tried.ShotsIn), shotsIn); // between the grid's headings may lie a better one
        var mostComposed = grid.Where(tried => tried.Keeps).Select(tried => tried.ShotsIn).DefaultIfEmpty(0).Max();
        var least = most * (1 - FramingAdvice.MostForForeground);
        if (mostComposed > 0 && mostComposed >= least)
            Assert.True(
                advised.KeepsForeground,
                $"{task.Frame}, {task.Move.Start}: {mostComposed} of {most} keep the ground, as " +
                $"{grid.First(tried => tried.Keeps && tried.ShotsIn == mostComposed).Heading}; {advised} does not");
        Assert.Equal(advised.KeepsForeground, task.Foreground.Holds(ShareOf(task, advised.Heading)));
        if (advised.KeepsForeground)
            Assert.True(shotsIn >= mostComposed && shotsIn >= least - 0.5, $"{task.Frame}: {shotsIn} of {mostComposed} and {most}");
        else
            Assert.True(shotsIn >= most, $"{task.Frame}: {shotsIn} of {most}");
    }

    private static List<(Heading Heading, int ShotsIn, bool Keeps)> Grid(
        FramingTask task, FramingScore score, Func<Heading, (Heading Start, Heading End)> move)
    {
        var all = new List<(Heading, int, bool)>();
        for (var azimuth = 0; azimuth < 360; azimuth += AzimuthStepDeg)
        {
            for (var altitude = -10; altitude <= 85; altitude += AltitudeStepDeg)
            {
                var heading = new Heading(azimuth, altitude, task.Move.Start.RollDeg);
                var (start, end) = move(heading);
                var shotsIn = score.ShotsIn(start, end);
                if (shotsIn > 0) all.Add((heading, shotsIn, task.Foreground.Holds(ShareOf(task, heading))));
            }
        }

        return all.Count > 0 ? all : [(default, 0, false)];
    }

    private static double ShareOf(FramingTask task, Heading heading) =>
        FrameSkyline.ForegroundShare(task.Frame, new CameraPose(heading, task.Frame.FocalLengthMm), task.Horizon);

    private static List<FramingTask> TasksOf(int seed, int count)
    {
        var random = new Random(20261201 + seed);
        return [.. Enumerable.Range(0, count).Select(_ => TaskOf(random))];
    }

    private static FramingTask TaskOf(Random random)
    {
        var latitude = random.NextDouble() * 120 - 60;
        var main = new Horizontal(5 + random.NextDouble() * 80, random.NextDouble() * 360);
        double[] apart = random.Next(2) == 0 ? [0] : [0, -10, -5, 5, 10];
        var tilt = random.NextDouble() * 2 - 1;
        var shots = random.Next(2) == 0 ? random.Next(1, 33) : random.Next(33, 700);
        var hours = 0.5 + random.NextDouble() * 7;
        double[] rolls = [0, 0, 0, 90, random.NextDouble() * 40 - 20];
        return new FramingTask
        {
            Frame = new Frame(36, 24, 14 + random.NextDouble() * random.NextDouble() * 100),
            Move = new Move
            {
                Start = new Heading(
                    main.AzimuthDeg + random.NextDouble() * 40 - 20,
                    Math.Clamp(main.AltitudeDeg - random.NextDouble() * 30, -5, 80),
                    rolls[random.Next(5)])
                    is var start
                    ? start
                    : default,
                End = start,
                EaseIn = random.Next(2) * 0.2,
                EaseOut = random.Next(2) * 0.2,
            },
            Points =
            [
                .. apart.Select(by => new SiderealTrack(
                    new Horizontal(Math.Clamp(main.AltitudeDeg + by * tilt, -80, 89), main.AzimuthDeg + by), latitude)),
            ],
            FirstShotS = 0,
            IntervalS = hours * 3600 / shots,
            ExposureS = 10,
            Shots = shots,
            Horizon = random.Next(2) == 0
                ? HorizonProfile.Level
                : new HorizonProfile(Enumerable.Range(0, 12).Select(i => new HorizonPoint(i * 30, random.NextDouble() * 12))),
            Foreground = new(0.2, 0.333),
        };
    }
}

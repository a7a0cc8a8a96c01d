using CsCheck;
using NightWatch.Planning.Camera;
using NightWatch.Planning.Directions;
using NightWatch.Planning.Framing;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Places;

namespace NightWatch.Planning.Tests.Framing;

public sealed class MoveFramingTests
{
    // The galactic core from 36 N 117 W at 2026-05-17 08:00 UTC (ERFA 2.0).
    private static readonly SiderealTrack Core = new(new Horizontal(19.5599, 153.4398), 36);

    private static FramingTask Task(double focal, Heading start, Heading end, int shots = 576) => new()
    {
        Frame = new Frame(36, 24, focal),
        Move = new Move { Start = start, End = end },
        Points = [Core],
        FirstShotS = 0,
        IntervalS = 25,
        ExposureS = 20,
        Shots = shots,
    };

    [Fact]
    public void The_first_frame_has_the_subject_where_the_projection_puts_it()
    {
        var outcome = MoveFraming.Along(Task(20, new Heading(160, 25), new Heading(160, 25)));
        Assert.Equal(-2.1750, outcome.Path[0].Subject.XMm, 3);
        Assert.Equal(-1.8628, outcome.Path[0].Subject.YMm, 3);
        Assert.Equal(0, outcome.Path[0].Shot);
        Assert.Equal(575, outcome.Path[^1].Shot);
    }

    [Fact]
    public void A_still_long_lens_loses_the_subject_at_the_frame_the_shots_say()
    {
        var task = Task(85, new Heading(153.4, 19.5), new Heading(153.4, 19.5));
        var outcome = MoveFraming.Along(task);
        Assert.Equal(0, outcome.FirstIn);
        var lost = Assert.NotNull(outcome.FirstLost);
        Assert.True(MoveFraming.At(task, lost - 1).IsIn && !MoveFraming.At(task, lost).IsIn);
        Assert.Equal(lost, outcome.ShotsIn);
        Assert.Equal(Enumerable.Range(0, 576).Count(shot => MoveFraming.At(task, shot).IsIn), outcome.ShotsIn);
    }

    [Fact]
    public void A_subject_that_comes_in_later_is_counted_from_there()
    {
        var task = Task(50, new Heading(185, 24), new Heading(185, 24));
        var outcome = MoveFraming.Along(task);
        var first = Assert.NotNull(outcome.FirstIn);
        Assert.True(first > 0 && MoveFraming.At(task, first).IsIn && !MoveFraming.At(task, first - 1).IsIn);
        Assert.Equal(Enumerable.Range(0, 576).Count(shot => MoveFraming.At(task, shot).IsIn), outcome.ShotsIn);
        Assert.Equal(outcome.ShotsIn / 576.0, outcome.ShareIn);
    }

    [Fact]
    public void The_best_end_keeps_a_long_lens_on_the_subject_to_the_last_frame()
    {
        var task = Task(50, new Heading(153.5, 19.5), new Heading(153.5, 19.5));
        Assert.True(MoveFraming.Along(task).ShareIn < 0.5);
        var end = FramingAdvice.BestEnd(task).Heading;
        var followed = MoveFraming.Along(task with { Move = task.Move with { End = end } });
        Assert.Equal(1, followed.ShareIn);
        Assert.True(followed.LeastRoom > 0.3, $"room {followed.LeastRoom}");
    }

    [Fact]
    public void The_best_still_heading_holds_at_least_as_many_frames_as_any_heading_tried()
    {
        var task = Task(35, new Heading(0, 0), new Heading(0, 0));
        var best = FramingAdvice.BestStill(task).Heading;
        var held = MoveFraming.Along(task with { Move = new Move { Start = best, End = best } }).ShotsIn;
        for (var azimuth = 120; azimuth <= 250; azimuth += 5)
        {
            for (var altitude = 0; altitude <= 50; altitude += 5)
            {
                var heading = new Heading(azimuth, altitude);
                var other = MoveFraming.Along(task with { Move = new Move { Start = heading, End = heading } }).ShotsIn;
                Assert.True(held >= other - 576 / 32, $"{heading} holds {other}, {best} only {held}"); // to one picked frame
            }
        }
    }

    [Fact]
    public void The_best_start_waits_for_the_subject()
    {
        var heading = new Heading(185, 24);
        var task = Task(35, heading, heading, shots: 144); // one hour
        var start = FramingAdvice.BestStartS(task, 0, 4 * 3600);
        Assert.True(MoveFraming.Along(task).ShareIn < 1);
        Assert.Equal(1, MoveFraming.Along(task with { FirstShotS = start }).ShareIn);
        Assert.InRange(start, 300, 4 * 3600);
    }

    [Fact]
    public void A_stretch_counts_when_enough_of_it_is_inside()
    {
        var task = Task(20, new Heading(155, 20), new Heading(155, 20), shots: 1);
        SiderealTrack At(double altitude, double azimuth) => new(new Horizontal(altitude, azimuth), 36);
        Assert.True(MoveFraming.At(task with { Points = [Core, At(22, 150), At(25, 145), At(80, 150), At(20, 300)] }, 0).IsIn);
        Assert.False(MoveFraming.At(task with { Points = [Core, At(22, 150), At(78, 145), At(80, 150), At(20, 300)] }, 0).IsIn);
        Assert.False(MoveFraming.At(task with { Points = [At(20, 300), Core, Core, Core, Core] }, 0).IsIn);
    }

    [Fact]
    public void Widening_the_field_never_takes_the_subject_out() =>
        Gen.Select(
                Gen.Double[10, 200],
                Gen.Double[0.3, 1],
                Gen.Double[0, 360],
                Gen.Double[-10, 80],
                Gen.Double[-30, 30],
                Gen.Double[-60, 60])
            .Sample(
                (focal, shorter, azimuth, altitude, roll, pan) =>
                {
                    var task = Task(focal, new Heading(azimuth, altitude, roll), new Heading(azimuth + pan, altitude, roll), shots: 40) with
                    {
                        IntervalS = 300,
                    };
                    var wide = task with { Frame = task.Frame with { FocalLengthMm = focal * shorter } };
                    for (var shot = 0; shot < 40; shot++) Assert.True(!MoveFraming.At(task, shot).IsIn || MoveFraming.At(wide, shot).IsIn);
                });

    [Fact]
    public void A_task_without_shots_is_refused() =>
        Assert.Throws<ArgumentException>(() => MoveFraming.Along(Task(20, default, default, shots: 0)));

    [Fact]
    public void A_level_horizon_through_a_level_camera_is_the_middle_of_the_frame()
    {
        var frame = new Frame(36, 24, 20);
        var pose = new CameraPose(new Heading(180, 0), 20);
        Assert.Equal(0.5, FrameSkyline.ForegroundShare(frame, pose, HorizonProfile.Level));
        var line = FrameSkyline.Trace(frame, pose, HorizonProfile.Level);
        Assert.All(line, point => Assert.Equal(0, point.YMm, 9));
        Assert.True(line[0].XMm <= -17.5 && line[^1].XMm >= 17.5 && line.Zip(line.Skip(1)).All(p => p.First.XMm < p.Second.XMm));
    }

    // Tilted up 10 degrees the horizon stands 20 tan 10° = 3.527 mm below the centre: (12 - 3.527) / 24 = 0.353 of the frame.
    [Fact]
    public void Tilting_up_leaves_less_ground()
    {
        var share = FrameSkyline.ForegroundShare(new Frame(36, 24, 20), new CameraPose(new Heading(90, 10), 20), HorizonProfile.Level);
        Assert.InRange(share, 0.33, 0.38); // to one of the sixteen rows looked at
    }
}

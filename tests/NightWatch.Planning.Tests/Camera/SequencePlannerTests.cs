using CsCheck;
using NightWatch.Planning.Camera;
using NightWatch.Planning.Watches;
using NodaTime;

namespace NightWatch.Planning.Tests.Camera;

public sealed class SequencePlannerTests
{
    private static readonly Instant Start = Instant.FromUtc(2026, 7, 14, 18, 0);

    /// <summary>
    /// Counts by arithmetic: the last frame must finish inside. 4 h of 20 s every 25 s are 576; the loose count would give 577.
    /// </summary>
    [Theory]
    [InlineData(14_400, 20, 25, 576)]
    [InlineData(19.9, 20, 25, 0)]
    [InlineData(20, 20, 25, 1)]
    [InlineData(44.9, 20, 25, 1)]
    [InlineData(45, 20, 25, 2)]
    public void The_last_frame_finishes_inside(double length, double exposure, double interval, int shots) =>
        Assert.Equal(shots, SequencePlanner.Shots(length, exposure, interval));

    [Fact]
    public void Four_hours_of_twenty_seconds_every_twenty_five_play_for_twenty_four_seconds()
    {
        var kit = new Kit { RawFileMb = 40, WriteMbPerS = 20 };
        var sequence = Plan(Duration.FromHours(4), kit, new SequenceWish { ExposureS = 20, MoveAndSettleS = 3 })!;

        Assert.Equal((25, 576, 24.0), (sequence.IntervalS, sequence.Shots, sequence.PlaybackS));
        Assert.Equal(575 * 25 + 20, sequence.Span.Duration.TotalSeconds);
        Assert.Equal(576 * 40 / 1000.0, sequence.StorageGb, 9);
    }

    [Fact]
    public void An_interval_too_short_for_exposure_writing_and_settling_is_lengthened()
    {
        var sequence = Plan(
            Duration.FromHours(2), new Kit { RawFileMb = 30, WriteMbPerS = 80 }, new SequenceWish { ExposureS = 15, IntervalS = 16 })!;

        Assert.Equal(18, sequence.IntervalS); // 15 + 0.375 + 2, in whole seconds
    }

    [Fact]
    public void A_wished_playback_is_spread_over_the_whole_run()
    {
        var sequence = Plan(Duration.FromHours(5), new Kit(), new SequenceWish { ExposureS = 10, PlaybackS = 10 })!;

        Assert.Equal((240, 10.0), (sequence.Shots, sequence.PlaybackS));
        Assert.Equal(75, sequence.IntervalS); // (18000 - 10) / 239 = 75.3
    }

    [Fact]
    public void A_wished_playback_at_a_wished_interval_ends_early()
    {
        var sequence = Plan(Duration.FromHours(5), new Kit(), new SequenceWish { ExposureS = 10, IntervalS = 20, PlaybackS = 10 })!;

        Assert.Equal((240, 20.0), (sequence.Shots, sequence.IntervalS));
        Assert.Equal(239 * 20 + 10, sequence.Span.Duration.TotalSeconds);
    }

    [Fact]
    public void A_playback_longer_than_the_run_allows_is_cut_to_the_run()
    {
        var wish = new SequenceWish { ExposureS = 10 };

        Assert.Equal(
            Plan(Duration.FromHours(1), new Kit(), wish)!.Shots,
            Plan(Duration.FromHours(1), new Kit(), wish with { PlaybackS = 60 })!.Shots);
    }

    [Fact]
    public void A_sequence_never_leaves_its_run_and_never_overlaps_its_frames() =>
        Gen.Select(Gen.Double[1, 30_000], Gen.Double[0.5, 60], Gen.Double[0, 90], Gen.Double[1, 120])
            .Sample(
                (length, exposure, interval, playback) =>
                {
                    var wishes = new[]
                    {
                        new SequenceWish { ExposureS = exposure },
                        new SequenceWish { ExposureS = exposure, IntervalS = interval },
                        new SequenceWish { ExposureS = exposure, PlaybackS = playback },
                    };
                    foreach (var wish in wishes)
                    {
                        if (Plan(Duration.FromSeconds(length), new Kit(), wish) is not { } sequence) continue;
                        Assert.True(sequence.Span.End <= Start + Duration.FromSeconds(length) + Duration.FromMilliseconds(1));
                        Assert.True(sequence.IntervalS >= exposure);
                    }
                });

    private static Sequence? Plan(Duration length, Kit kit, SequenceWish wish) =>
        SequencePlanner.Plan(new Interval(Start, Start + length), kit, wish, fastestDeclinationDeg: -29, darkestCandelaPerM2: 2e-4);
}

using NightWatch.Planning.Verification;
using NightWatch.Planning.Verification.Outcomes;
using NightWatch.Words;
using NodaTime;

namespace NightWatch.Pictures.Tests;

public sealed class RecordPicturesTests
{
    private static readonly Speech Speaking = Speech.ToAnybody;

    private static readonly LocalDate First = new(2027, 1, 30);

    [Fact]
    public void The_ledger_says_every_kind_of_night_in_words_and_draws_each_in_a_form_of_its_own()
    {
        LedgerNight[] nights =
        [
            new(First, true, true), new(First.PlusDays(1), true, false), new(First.PlusDays(2), false, true),
            new(First.PlusDays(3), false, false), new(First.PlusDays(4), true, null),
        ];

        Assert.Equal(
            "Calls night by night: 1 called on and usable, 1 drive for nothing, 1 usable night called off, 1 rightly called off, 1 not " +
            "known.",
            CallLedger.SceneOf(nights, Speaking).Says);
        // January and February, a row each: the marks of day 30 and 31 stand above those of day 1.
        var squares = CallLedger.SceneOf(nights, Speaking).Shapes.OfType<Shape.Area>().Where(area => area.Color == "#14514a").ToList();
        var rings = CallLedger
            .SceneOf(nights, Speaking)
            .Shapes.OfType<Shape.Line>()
            .Where(line => line is { Color: "#8a5a00", Path.Count: > 10 })
            .ToList();
        Assert.Equal(2, squares.Count); // the night and the legend
        Assert.True(squares[0].Outline[0].Y < rings[0].Path[0].Y - 10);
    }

    [Fact]
    public void The_ledger_counts_months_over_the_turn_of_a_year()
    {
        var one = CallLedger.SceneOf([new(new LocalDate(2027, 12, 31), true, true)], Speaking).Height;
        var two = CallLedger
            .SceneOf([new(new LocalDate(2027, 12, 31), true, true), new(new LocalDate(2028, 1, 1), true, true)], Speaking)
            .Height;
        var year = CallLedger
            .SceneOf([new(new LocalDate(2027, 2, 1), true, true), new(new LocalDate(2028, 2, 29), true, true)], Speaking)
            .Height;

        Assert.Equal(12 * (two - one), year - one, 9);
    }

    [Fact]
    public void Said_against_came_shows_only_what_enough_nights_bear()
    {
        var bins = ReliabilityDiagram.Of([.. Pairs(0.85, 20, 15), .. Pairs(0.15, 9, 1)]);

        Assert.Equal(
            "Said against came: said about 85 %, came 75 % of 20 nights.", ReliabilityPicture.SceneOf(bins, Speaking.Language)!.Says);
        Assert.Contains("said about 85 %", ReliabilityPicture.Svg(bins, Speaking.Language), StringComparison.Ordinal);
        Assert.Null(ReliabilityPicture.Svg(ReliabilityDiagram.Of(Pairs(0.15, 9, 1)), Speaking.Language));
    }

    /// <summary>Bars are 370 px wide; a quarter of the nights is 92.5.</summary>
    [Fact]
    public void Each_source_has_a_bar_of_all_nights_in_parts_of_their_share_and_form()
    {
        SourceTally[] tallies = [new(OutcomeSource.AutomaticMetar, 0, 10, 20, 10), new(OutcomeSource.Analysis, 10, 30, 0, 0)];

        var scene = SourcePicture.SceneOf(tallies, Speaking.Language)!;

        Assert.Equal(
            "Aerodrome, automatic: 40 nights, 0 told usable, 10 told not usable, 20 could not tell, 10 not a word. "
            + "Later runs: 40 nights, 10 told usable, 30 told not usable, 0 could not tell, 0 not a word.",
            scene.Says);
        var bars = scene.Shapes.OfType<Shape.Area>().Where(area => area.Outline[2].Y - area.Outline[0].Y == 22)
            .Select(area => (From: area.Outline[0].X, Width: area.Outline[1].X - area.Outline[0].X)).ToList();
        Assert.Equal([(6, 92.5), (98.5, 185), (283.5, 92.5), (6, 92.5), (98.5, 277.5)], bars);
        // A full part, an upright hatching, a slanted one and an empty part.
        Assert.Single(
            scene.Shapes.OfType<Shape.Area>(), area => area is { Color: "#14514a" } && area.Outline[2].Y - area.Outline[0].Y == 22);
        Assert.Contains(
            scene.Shapes.OfType<Shape.Line>(), line => line.Path.Count == 2 && line.Path[0].X == line.Path[1].X && line.Color == "#8c1c1c");
        Assert.Contains(scene.Shapes.OfType<Shape.Line>(), line => line is { Dash: > 0 } && line.Path[0].X != line.Path[1].X);
        Assert.Equal(
            ["10", "20", "10", "10", "30"], scene.Shapes.OfType<Shape.Words>().Where(words => words.Bold).Select(words => words.Text));
    }

    [Fact]
    public void Where_no_source_said_anything_there_is_no_picture() => Assert.Null(SourcePicture.Svg([], Speaking.Language));

    private static IEnumerable<ForecastPair> Pairs(double said, int count, int came) =>
        Enumerable.Range(0, count).Select(i => new ForecastPair(said, i < came));
}

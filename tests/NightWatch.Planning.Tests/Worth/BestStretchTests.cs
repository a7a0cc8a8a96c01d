using CsCheck;
using NightWatch.Planning.Grid;
using NightWatch.Planning.Worth;
using NodaTime;

namespace NightWatch.Planning.Tests.Worth;

/// <summary>
/// Held against every stretch there is, by the definition: ends of some worth, no worthless gap too long, a mean of 0.6 at least.
/// </summary>
public sealed class BestStretchTests
{
    private static readonly Instant Start = Instant.FromUtc(2026, 7, 14, 18, 0);

    private static readonly Gen<double> Worth = Gen.Select(Gen.Int[0, 9], Gen.Double[0, 1]).Select((kind, value) => kind switch
    {
        < 3 => 0,
        3 => double.NaN,
        < 6 => 1,
        _ => Math.Round(value, 2),
    });

    [Fact]
    public void It_is_the_best_of_all_stretches() =>
        Gen.Select(Worth.Array[1, 40], Gen.Int[0, 45], Gen.Int[0, 20], Gen.Int[0, 20])
            .Sample(
                (worth, gap, head, tail) =>
                {
                    var grid = new NightGrid(Start, worth.Length);
                    // Two windows that cut the night anywhere, the first and last cells in part.
                    var middle = Start + NightGrid.Step * (worth.Length / 2);
                    var (early, late) = (Start + Duration.FromSeconds(9 * head), middle + Duration.FromMinutes(2));
                    Interval[] windows =
                    [new(early, Instant.Max(early, middle)), new(late, Instant.Max(late, grid.Span.End - Duration.FromSeconds(9 * tail)))];
                    var longest = Duration.FromMinutes(gap);
                    var found = BestStretch.Of(worth, grid, windows, longest);
                    var best = windows
                        .SelectMany(window => All(worth, grid, window, longest))
                        .DefaultIfEmpty((Usable: 0, Cells: 0, First: 0))
                        .Max(stretch => stretch.Usable);

                    Assert.Equal(best, found?.UsableMin ?? 0, 1e-5);
                    if (found is not { } stretch) return;
                    var same = windows
                        .SelectMany(window => All(worth, grid, window, longest))
                        .Where(one => Math.Abs(one.Usable - best) < 1e-5)
                        .ToList();
                    Assert.Contains(same, one => one.First == stretch.First && one.Cells == stretch.Last - stretch.First + 1);
                },
                iter: 3000);

    [Fact]
    public void Of_unknown_worth_nothing_is_claimed()
    {
        double[] worth = [1, 1, 1, 1, double.NaN, double.NaN, 1, 1, double.NaN, double.NaN, double.NaN, double.NaN, double.NaN, 1, 1];
        var grid = new NightGrid(Start, worth.Length);

        var found = BestStretch.Of(worth, grid, [grid.Span], Duration.FromMinutes(20))!.Value;

        // Ten minutes are bridged, twenty-five are not.
        Assert.Equal((0, 7, 30.0), (found.First, found.Last, found.UsableMin));
        Assert.Equal(new Interval(grid.Start, grid.At(8)), found.Span);
    }

    [Fact]
    public void Without_any_worth_there_is_none() =>
        Assert.Null(BestStretch.Of([0, double.NaN, 0], new NightGrid(Start, 3), [new NightGrid(Start, 3).Span], Duration.FromMinutes(20)));

    [Fact]
    public void More_worth_anywhere_never_makes_it_worth_less() =>
        Gen.Select(Worth.Array[1, 60], Gen.Int[0, 59], Gen.Double[0, 1]).Sample((worth, at, more) =>
        {
            var grid = new NightGrid(Start, worth.Length);
            var better = (double[])worth.Clone();
            if (at < better.Length && !double.IsNaN(better[at])) better[at] = Math.Min(1, better[at] + more);
            var (before, after) = (Of(worth), Of(better));
            return after >= before - 1e-6;

            double Of(double[] values) => BestStretch.Of(values, grid, [grid.Span], Duration.FromMinutes(20))?.UsableMin ?? 0;
        }, iter: 2000);

    private static IEnumerable<(double Usable, int Cells, int First)> All(
        double[] worth, NightGrid grid, Interval window, Duration longestGap)
    {
        if (window.Start >= window.End) yield break;
        var (low, high) = grid.Cells(window);
        for (var first = low; first <= high; first++)
        {
            for (var last = first; last <= high; last++)
            {
                if (!(worth[first] > 0) || !(worth[last] > 0)) continue;
                var (usable, all, gap, isBroken) = (0.0, 0.0, 0.0, false);
                for (var cell = first; cell <= last; cell++)
                {
                    var minutes = (Instant.Min(window.End, grid.At(cell + 1)) - Instant.Max(window.Start, grid.At(cell))).TotalMinutes;
                    gap = worth[cell] > 0 ? 0 : gap + minutes;
                    isBroken |= gap > longestGap.TotalMinutes;
                    if (worth[cell] > 0) usable += worth[cell] * minutes;
                    all += minutes;
                }

                if (!isBroken && usable >= (0.6 * all) - 1e-9) yield return (usable, last - first + 1, first);
            }
        }
    }
}

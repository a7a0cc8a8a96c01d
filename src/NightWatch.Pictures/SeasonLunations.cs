using System.Globalization;
using NightWatch.Planning.Reasons;
using NightWatch.Sky.Season;
using NightWatch.Words;

namespace NightWatch.Pictures;

/// <summary>
/// What belongs to whole nights: the Moon's lit share, the best run of each lunation, the usable hours as bars, the best nights.
/// </summary>
internal sealed class SeasonLunations(SeasonFrame frame, Speech speech)
{
    private const int NightsNumbered = 5;
    private const double BracketPx = 42;
    private const string MoonShade = "#8d95a6";

    /// <summary>Runs and Moon, above the hours.</summary>
    public IEnumerable<Shape> Paint(DarkCalendar calendar)
    {
        var foot = SeasonFrame.MoonTopPx + SeasonFrame.MoonHeightPx;
        yield return new Shape.Words(new(SeasonFrame.LeftPx - 10, foot - 4), speech.Language.MoonCurve, 14, Anchor: Anchor.End);
        foreach (var night in calendar.Nights)
        {
            var height = SeasonFrame.MoonHeightPx * night.Sky.Moon.IlluminatedFraction;
            if (height >= 0.5)
                yield return TimeAxis.Box(frame.X(night.Night), foot - height, frame.X(night.Night) + frame.ColumnPx, foot, MoonShade);
        }

        yield return new Shape.Words(
            new(SeasonFrame.LeftPx - 10, SeasonFrame.RunsTopPx + BracketPx + 6), speech.Language.BestRow, 14, Anchor: Anchor.End);
        double[] freeFrom = [double.NegativeInfinity, double.NegativeInfinity];
        foreach (var run in calendar.Lunations.Where(lunation => lunation.Best is not null).Select(lunation => lunation.Best!))
        {
            double x0 = frame.X(run.First), x1 = frame.X(run.Last) + frame.ColumnPx;
            var y = SeasonFrame.RunsTopPx + BracketPx;
            yield return new Shape.Line([new(x0, y + 6), new(x0, y), new(x1, y), new(x1, y + 6)], SeasonFrame.Ink, 2);
            var text = speech.Language.BestRun(run, frame.ColumnPx >= 6);
            var half = text.Length * 4.3;
            var middle = Math.Clamp((x0 + x1) / 2, SeasonFrame.LeftPx + half, frame.Width - half - 6);
            // Neighbours that would touch go up a row.
            var row = Array.FindIndex(freeFrom, free => middle - half >= free);
            if (row < 0) continue;
            freeFrom[row] = middle + half + 6;
            yield return new Shape.Words(new(middle, y - 7 - 16 * row), text, 13, Bold: true, Anchor: Anchor.Middle);
        }
    }

    /// <summary>Usable hours a night, below the hours; the best nights numbered.</summary>
    public IEnumerable<Shape> Bars(DarkCalendar calendar)
    {
        var most = Math.Max(1, Math.Ceiling(calendar.Nights.Max(night => night.Usable.TotalHours)));
        var foot = frame.BarsTop + SeasonFrame.BarsHeightPx;
        yield return new Shape.Words(
            new(SeasonFrame.LeftPx - 10, frame.BarsTop + 11), speech.Units.Figure(most, Unit.Hours), 14, Anchor: Anchor.End);
        yield return new Shape.Line([new(SeasonFrame.LeftPx, frame.BarsTop), new(frame.Right, frame.BarsTop)], "#d6dae2", 1);
        foreach (var night in calendar.Nights.Where(night => night.IsUsable))
        {
            var x = frame.X(night.Night);
            var gap = frame.ColumnPx >= 6 ? 1 : 0;
            yield return TimeAxis.Box(x + gap, foot - Height(night, most), x + frame.ColumnPx - gap, foot, SeasonColumns.Usable);
        }

        var numbered = calendar.Ranked.Take(NightsNumbered).Select((night, index) => (night, Rank: index + 1));
        foreach (var (night, rank) in numbered.Where(_ => frame.ColumnPx >= 14))
        {
            var text = rank.ToString(CultureInfo.InvariantCulture);
            yield return new Shape.Words(
                new(frame.X(night.Night) + frame.ColumnPx / 2, foot - 5), text, 13, Bold: true, Anchor: Anchor.Middle);
        }
    }

    private static double Height(DarkNight night, double mostHours) => SeasonFrame.BarsHeightPx * night.Usable.TotalHours / mostHours;
}

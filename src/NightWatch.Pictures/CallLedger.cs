using System.Globalization;
using NightWatch.Planning.Verification;
using NightWatch.Words;
using NodaTime;

namespace NightWatch.Pictures;

/// <summary>One night of a record: the last call before it, and what came.</summary>
/// <param name="Night">Local date of the evening.</param>
/// <param name="SaidOn">Called on (go or marginal).</param>
/// <param name="Usable">It came usable; null: nobody can say.</param>
public readonly record struct LedgerNight(LocalDate Night, bool SaidOn, bool? Usable);

/// <summary>
/// The calls over the months, a row a month and a column a day: each night a mark that differs in form, not in colour alone. Nights without
/// a mark were no test: the sky ruled them out, or nobody looked.
/// </summary>
public static class CallLedger
{
    private const double LeftPx = 60;
    private const double ColumnPx = 10;
    private const double RowPx = 17;
    private const double TopPx = 26;
    private const double WidthPx = LeftPx + 31 * ColumnPx + 6;
    private const string Ink = "#14181f";
    private const string Faint = "#5d6878";
    private const string Hit = "#14514a";
    private const string Bad = "#8c1c1c";
    private const string Lost = "#8a5a00";

    /// <summary>The picture as an SVG element.</summary>
    /// <param name="nights">Ascending; at least one.</param>
    /// <param name="speech">Language, units and clock of the reader.</param>
    public static string Svg(IReadOnlyList<LedgerNight> nights, Speech speech) => SvgPicture.Of(SceneOf(nights, speech));

    internal static Scene SceneOf(IReadOnlyList<LedgerNight> nights, Speech speech)
    {
        ArgumentNullException.ThrowIfNull(nights);
        var (first, last) = (nights[0].Night.ToYearMonth(), nights[^1].Night.ToYearMonth());
        var rows = Period.Between(first.OnDayOfMonth(1), last.OnDayOfMonth(1), PeriodUnits.Months).Months + 1;
        var bottom = TopPx + rows * RowPx;
        Shape[] shapes =
        [
            .. Days(),
            .. Enumerable.Range(0, rows).SelectMany(row => Month(first.PlusMonths(row), row, speech.Clock)),
            .. nights.SelectMany(night => Mark(X(night.Night.Day), TopPx + (Row(night.Night) + 0.5) * RowPx, night.SaidOn, night.Usable)),
            .. Legend(bottom + 18, speech.Language),
        ];
        return new Scene(WidthPx, bottom + 84, Says(nights, speech.Language), shapes);

        int Row(LocalDate night) => Period.Between(first.OnDayOfMonth(1), night.ToYearMonth().OnDayOfMonth(1), PeriodUnits.Months).Months;
    }

    private static double X(int day) => LeftPx + (day - 0.5) * ColumnPx;

    private static IEnumerable<Shape> Days()
    {
        foreach (var day in (int[])[1, 5, 10, 15, 20, 25, 31])
            yield return new Shape.Words(
                new(X(day), TopPx - 9), day.ToString(CultureInfo.InvariantCulture), 12, Anchor: Anchor.Middle, Color: Faint);
    }

    private static IEnumerable<Shape> Month(YearMonth month, int row, ClockWords clock)
    {
        var y = TopPx + (row + 0.5) * RowPx;
        yield return new Shape.Words(
            new(2, y + 4), month.Month == 1 || row == 0 ? clock.MonthOfYear(month) : clock.Month(month), 12, Color: Ink);
        yield return new Shape.Line([new(X(1), y), new(X(month.OnDayOfMonth(1).With(DateAdjusters.EndOfMonth).Day), y)], "#e6e2d6", 0.7);
    }

    /// <summary>Full square, crossed square, ring, dot, dash.</summary>
    private static IEnumerable<Shape> Mark(double x, double y, bool saidOn, bool? usable)
    {
        switch (saidOn, usable)
        {
            case (true, true):
                yield return new Shape.Area(Square(x, y, 4.2), Hit);
                break;
            case (true, false):
                yield return new Shape.Area(Square(x, y, 4.2), "#ffffff");
                yield return new Shape.Line([.. Square(x, y, 3.8), Square(x, y, 3.8)[0]], Bad, 1.3);
                yield return new Shape.Line([new(x - 3.8, y - 3.8), new(x + 3.8, y + 3.8)], Bad, 1.3);
                yield return new Shape.Line([new(x - 3.8, y + 3.8), new(x + 3.8, y - 3.8)], Bad, 1.3);
                break;
            case (false, true):
                yield return new Shape.Area(Circle(x, y, 4.4), "#ffffff");
                yield return new Shape.Line([.. Circle(x, y, 3.7), Circle(x, y, 3.7)[0]], Lost, 1.6);
                break;
            case (false, false):
                yield return new Shape.Area(Circle(x, y, 1.9), Faint);
                break;
            default:
                yield return new Shape.Line([new(x - 3, y), new(x + 3, y)], saidOn ? Hit : Faint, saidOn ? 2.4 : 1.2);
                break;
        }
    }

    private static IEnumerable<Shape> Legend(double y, ILanguage language)
    {
        bool?[] came = [true, false, null];
        return came.SelectMany((usable, i) => Entry(8, y + 20 * i, true, usable))
            .Concat(came.SelectMany((usable, i) => Entry(WidthPx * 0.56, y + 20 * i, false, usable)));

        IEnumerable<Shape> Entry(double x, double y, bool saidOn, bool? usable) =>
            [.. Mark(x, y, saidOn, usable), new Shape.Words(new(x + 12, y + 4), language.LedgerMark(saidOn, usable), 12, Color: Ink)];
    }

    private static string Says(IReadOnlyList<LedgerNight> nights, ILanguage language) => language.CallLedger(
        ContingencyTable.Of(nights.Where(night => night.Usable is not null).Select(night => (night.SaidOn, night.Usable!.Value))),
        nights.Count(night => night.Usable is null));

    private static Spot[] Square(double x, double y, double half) =>
        [new(x - half, y - half), new(x + half, y - half), new(x + half, y + half), new(x - half, y + half)];

    private static Spot[] Circle(double x, double y, double radius) =>
        [.. Enumerable.Range(0, 16).Select(i => new Spot(x + radius * Math.Cos(i * Math.PI / 8), y + radius * Math.Sin(i * Math.PI / 8)))];
}

using System.Globalization;
using NightWatch.Sky.Nights;
using NightWatch.Sky.Season;
using NodaTime;

namespace NightWatch.Pictures;

/// <summary>
/// The hours of each night: shades for Sun and Moon, the usable time, the edges of the subject's time above its least altitude.
/// </summary>
internal sealed class SeasonColumns(SeasonFrame frame)
{
    public const string Day = "#f6f1e2";
    public const string CivilTwilight = "#cfd6e4";
    public const string NauticalTwilight = "#97a6c4";
    public const string AstronomicalTwilight = "#586a93";
    public const string Night = "#1b2540";
    public const string Usable = "#ffb627";
    public const string SubjectEdge = "#d3521c";
    public const string EclipsedMoon = "#7d2f1d";

    // What a full Moon makes of the night's shade.
    private const string FullMoonlight = "#b9b59c";

    /// <summary>All columns.</summary>
    public IEnumerable<Shape> Paint(DarkCalendar calendar)
    {
        yield return TimeAxis.Box(SeasonFrame.LeftPx, SeasonFrame.TopPx, frame.Right, frame.Bottom, Day);
        foreach (var night in calendar.Nights)
        {
            foreach (var shape in Column(night)) yield return shape;
        }

        foreach (var night in calendar.Nights)
        {
            foreach (var shape in Edges(night)) yield return shape;
        }
    }

    /// <summary>The night's shade with the Moon up.</summary>
    public static string Moonlit(double illuminatedFraction) => Blend(Night, FullMoonlight, 0.15 + 0.85 * illuminatedFraction);

    private IEnumerable<Shape> Column(DarkNight night)
    {
        var sky = night.Sky;
        var depths = DepthsOf(sky);
        (IReadOnlyList<Interval> Stretches, string Color)[] layers =
        [
            (depths.Sunset, CivilTwilight), (depths.Civil, NauticalTwilight), (depths.Nautical, AstronomicalTwilight),
            (sky.AstronomicalNight, Moonlit(sky.Moon.IlluminatedFraction)), (sky.DarkWindows, Night), (night.Offer.Windows, Usable),
            (night.Eclipse?.DarkTotality ?? [], EclipsedMoon),
        ];
        var x = frame.X(night.Night);
        foreach (var (stretches, color) in layers)
        {
            foreach (var stretch in stretches)
            {
                double top = frame.Y(stretch.Start, night.Night), bottom = frame.Y(stretch.End, night.Night);
                // A little into the next night, which is painted over it: no seam where a column is not a whole number of device pixels.
                if (bottom > top) yield return TimeAxis.Box(x, top, Math.Min(x + frame.ColumnPx + 0.3, frame.Right), bottom, color);
            }
        }
    }

    private IEnumerable<Shape> Edges(DarkNight night)
    {
        if (night.Sky.Subject.State == SubjectState.None) yield break;
        foreach (var window in night.Sky.SubjectWindows)
        {
            if (window.Start > night.Sky.Span.Start) foreach (var shape in Edge(window.Start, night)) yield return shape;
            if (window.End < night.Sky.Span.End) foreach (var shape in Edge(window.End, night)) yield return shape;
        }
    }

    private IEnumerable<Shape> Edge(Instant at, DarkNight night)
    {
        var y = frame.Y(at, night.Night);
        var x = frame.X(night.Night);
        if (y > SeasonFrame.TopPx && y < frame.Bottom) yield return new Shape.Line([new(x, y), new(x + frame.ColumnPx, y)], SubjectEdge, 2);
    }

    // The span's times below the horizon, −6° and −12°. Where one edge is missing the stretch runs to the span's own; where both are, the
    // deeper level tells whether the Sun stays below.
    private static (IReadOnlyList<Interval> Sunset, IReadOnlyList<Interval> Civil, IReadOnlyList<Interval> Nautical) DepthsOf(NightSky sky)
    {
        var nautical = Below(sky, sky.Sun.NauticalDusk, sky.Sun.NauticalDawn, sky.AstronomicalNight.Count > 0);
        var civil = Below(sky, sky.Sun.CivilDusk, sky.Sun.CivilDawn, nautical.Count > 0);
        var sunset = Below(sky, sky.Sun.Set, sky.Sun.Rise, sky.Sun.State == SunState.AlwaysDown);
        return (sunset, civil, nautical);
    }

    private static IReadOnlyList<Interval> Below(NightSky sky, Instant? dusk, Instant? dawn, bool throughout)
    {
        if (dusk is null && dawn is null) return throughout ? [sky.Span] : [];
        var (start, end) = (dusk ?? sky.Span.Start, dawn ?? sky.Span.End);
        return start < end ? [new(start, end)] : [new(sky.Span.Start, end), new(start, sky.Span.End)];
    }

    private static string Blend(string from, string to, double share)
    {
        var mixed = new byte[3];
        for (var i = 0; i < 3; i++) mixed[i] = (byte)Math.Round(Channel(from, i) + share * (Channel(to, i) - Channel(from, i)));
        return "#" + Convert.ToHexStringLower(mixed);
    }

    private static int Channel(string color, int index) =>
        int.Parse(color.AsSpan(1 + 2 * index, 2), NumberStyles.HexNumber, CultureInfo.InvariantCulture);
}

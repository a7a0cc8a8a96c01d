using System.Globalization;
using NightWatch.Weather.Fake;

namespace NightWatch.Bench.Climates;

/// <summary>One hour of a typical year.</summary>
/// <param name="Month">1 to 12.</param>
/// <param name="SolarHour">Of its middle, 0 to 24.</param>
/// <param name="Cloud">Opaque sky cover, fraction.</param>
/// <param name="DepressionK">Air temperature minus dew point.</param>
/// <param name="WindMps">Mean wind.</param>
internal readonly record struct TypicalHour(int Month, double SolarHour, double Cloud, double DepressionK, double WindMps);

/// <summary>A typical year of hours from an EPW file: eight lines of header, then 8,760 of hours that end at the hour given.</summary>
internal sealed record TypicalYear(string Station, double LatitudeDeg, double LongitudeDeg, double ZoneH, IReadOnlyList<TypicalHour> Hours)
{
    private const int HeaderLines = 8;
    private const int FirstHourOfNight = 20;

    public static TypicalYear Read(IReadOnlyList<string> lines)
    {
        var head = lines[0].Split(',');
        var (latitude, longitude, zone) = (Number(head[6]), Number(head[7]), Number(head[8]));
        return new TypicalYear(
            head[1],
            latitude,
            longitude,
            zone,
            [
                .. lines
                    .Skip(HeaderLines)
                    .Where(line => line.Length > 0)
                    .Select(line =>
                    {
                        var cells = line.Split(',');
                        var solar = (Number(cells[3]) - 0.5 + longitude / 15 - zone + 24) % 24;
                        return new TypicalHour(
                            int.Parse(cells[1], CultureInfo.InvariantCulture),
                            solar,
                            Number(cells[23]) / 10,
                            Number(cells[6]) - Number(cells[7]),
                            Number(cells[21]));
                    }),
            ]);
    }

    /// <summary>The nights from 20 to 04 h of local standard time.</summary>
    public StationFigures Nights()
    {
        var nights = Enumerable
            .Range(0, Hours.Count / 24 - 1)
            .Select(day => Hours.Skip(24 * day + FirstHourOfNight).Take(StationFigures.Hours).ToList())
            .ToList();
        return StationFigures.Of(
            [.. nights.Select(night => night.Average(hour => hour.Cloud))],
            [.. nights.Select(night => night.Min(hour => hour.DepressionK))]);
    }

    private static double Number(string text) => double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);
}

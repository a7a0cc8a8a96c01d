using System.Globalization;

namespace NightWatch.Sky.Places;

/// <summary>
/// Reads a skyline from plain text: a line a point, azimuth and altitude in degrees, between them a comma, a semicolon or a tab. Blank
/// lines and what follows a # are passed over, and so is a first line of words.
/// </summary>
public static class HorizonCsv
{
    private static readonly char[] Separators = ['\t', ';', ','];

    /// <summary>Reads a skyline.</summary>
    /// <param name="text">The lines.</param>
    /// <returns>A level horizon when there is no point at all.</returns>
    /// <exception cref="FormatException">The message names the line and what is accepted.</exception>
    public static HorizonProfile Read(TextReader text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var points = new SortedDictionary<double, (double AltitudeDeg, int Line)>();
        var mayBeHeading = true;
        for (var number = 1; text.ReadLine() is { } line; number++)
        {
            var fields = FieldsOf(line);
            if (fields.Length == 0) continue;
            if (mayBeHeading && fields.All(IsWords))
            {
                mayBeHeading = false;
                continue;
            }

            mayBeHeading = false;
            Add(points, PointOf(fields, number), number);
        }

        return new(points.Select(point => new HorizonPoint(point.Key, point.Value.AltitudeDeg)));
    }

    private static string[] FieldsOf(string line)
    {
        var hash = line.IndexOf('#', StringComparison.Ordinal);
        var content = (hash < 0 ? line : line[..hash]).Trim().TrimStart('\uFEFF');
        return content.Length == 0 ? [] : content.Split(Array.Find(Separators, content.Contains), StringSplitOptions.TrimEntries);
    }

    private static bool IsWords(string field) => field.Length > 0 && field.Any(char.IsLetter) && !TryNumber(field, out _);

    private static HorizonPoint PointOf(string[] fields, int line)
    {
        if (fields.Length != 2) throw Refused(line, $"has {fields.Length} fields; accepted: two, azimuth and altitude in degrees");
        var azimuth = Number(fields[0], "azimuth", 0, 360, line);
        var altitude = Number(fields[1], "altitude", -5, 90, line);
        return new(azimuth, altitude);
    }

    private static double Number(string field, string name, double least, double most, int line) =>
        TryNumber(field, out var value) && value >= least && value <= most
            ? value
            : throw Refused(line, FormattableString.Invariant($"{name} '{field}' is not a number from {least} to {most} degrees"));

    // 360 is north too, and profiles often end with it as they began.
    private static void Add(SortedDictionary<double, (double AltitudeDeg, int Line)> points, HorizonPoint point, int line)
    {
        var azimuth = point.AzimuthDeg % 360;
        if (points.TryGetValue(azimuth, out var earlier))
        {
            if (earlier.AltitudeDeg == point.AltitudeDeg) return;
            throw Refused(line, FormattableString.Invariant($"azimuth {azimuth} stands already in line {earlier.Line} with altitude {earlier.AltitudeDeg}"));
        }

        points.Add(azimuth, (point.AltitudeDeg, line));
    }

    private static bool TryNumber(string field, out double value) =>
        double.TryParse(field, NumberStyles.Float, CultureInfo.InvariantCulture, out value);

    private static FormatException Refused(int line, string what) => new(FormattableString.Invariant($"Horizon line {line}: {what}."));
}

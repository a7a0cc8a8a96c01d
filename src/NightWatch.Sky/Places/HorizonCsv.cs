using System.Globalization;

namespace NightWatch.Sky.Places;

/// <summary>
/// Reads a skyline from plain text: a line a point, azimuth and altitude in degrees, between them a comma, a semicolon or a tab. Blank
/// lines and what follows a # are passed over, and so is a heading such as "azimuth, altitude" before the first point.
/// </summary>
public static class HorizonCsv
{
    private static readonly char[] Separators = ['\t', ';', ','];

    // What the two columns may be called, with their unit or without.
    private static readonly string[] AzimuthNames = ["azimuth", "az", "azi", "bearing", "direction"];
    private static readonly string[] AltitudeNames = ["altitude", "alt", "elevation", "el", "height", "horizon"];
    private static readonly string[] Units = ["", "deg", "degree", "degrees", "\u00B0"];

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
            var isFirst = mayBeHeading;
            mayBeHeading = false;
            if (isFirst && IsHeading(fields)) continue;
            if (isFirst && fields.Length == 2 && fields.All(IsWords))
                throw Refused(
                    number,
                    $"'{fields[0]}' and '{fields[1]}' are neither a point nor a heading; accepted: azimuth and altitude in degrees, " +
                    "before them one heading such as azimuth,altitude");
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

    private static bool IsHeading(string[] fields) =>
        fields.Length == 2 && IsNamed(fields[0], AzimuthNames) && IsNamed(fields[1], AltitudeNames);

    // "Azimuth", "azimuth_deg", "azimuth (°)", "AzimuthDeg".
    private static bool IsNamed(string field, string[] names)
    {
        var word = string.Concat(field.ToLowerInvariant().Where(c => char.IsLetter(c) || c == '\u00B0'));
        return names.Any(name => word.StartsWith(name, StringComparison.Ordinal) && Units.Contains(word[name.Length..]));
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
            throw Refused(
                line,
                FormattableString.Invariant($"azimuth {azimuth} stands already in line {earlier.Line} with altitude {earlier.AltitudeDeg}")
            );
        }

        points.Add(azimuth, (point.AltitudeDeg, line));
    }

    private static bool TryNumber(string field, out double value) =>
        double.TryParse(field, NumberStyles.Float, CultureInfo.InvariantCulture, out value);

    private static FormatException Refused(int line, string what) => new(FormattableString.Invariant($"Horizon line {line}: {what}."));
}

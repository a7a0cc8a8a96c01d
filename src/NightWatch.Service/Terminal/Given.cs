using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using NightWatch.Places;
using NightWatch.Sky.Nights;
using NightWatch.Weather.Fake;
using NodaTime;
using NodaTime.Text;

namespace NightWatch.Service.Terminal;

/// <summary>The options that several commands take, each with the one sentence that refuses a bad value.</summary>
internal static class Given
{
    private const string Mark = " (required)";

    // Longer lists of words stand in the description alone, or the help is wider than a window.
    private const int MostHelp = 40;

    private static readonly LocalTimePattern ToTheMinute = LocalTimePattern.CreateWithInvariantCulture("HH':'mm");

    public static Option<double?> Latitude() => Number("--lat", "Latitude, degrees north (south is negative).", -90, 90);

    public static Option<double?> Longitude() => Number("--lon", "Longitude, degrees east (west is negative).", -180, 180);

    public static Option<double?> Elevation() => Number("--elevation", "Metres above the sea; default 0.", -500, 9000);

    public static Option<double?> MinAltitude() => Number("--min-altitude", "Least altitude of the subject, degrees; default 10.", -90, 90);

    public static Option<double?> RightAscension() => Number("--ra", "Right ascension of the subject, ICRS, degrees.", 0, 360);

    public static Option<double?> Declination() => Number("--dec", "Declination of the subject, ICRS, degrees.", -90, 90);

    public static Option<string?> Subject() =>
        Text("--subject", $"What the camera is for: {SubjectNames.Accepted}; default galactic-core.");

    public static Option<string?> Horizon() =>
        Text("--horizon", "CSV file with the site's skyline: azimuth and altitude in degrees, a line a point.", "file");

    public static Option<DateTimeZone?> Zone() =>
        Parsed<DateTimeZone?>("--zone", "IANA time zone of the site, such as Africa/Windhoek.", "zone", ZoneOf);

    public static Option<LocalDate?> Date(string name, string description) =>
        Parsed<LocalDate?>(name, description, "date", text => DateOf(text));

    public static Option<Instant?> Instant(string name, string description) => Parsed<Instant?>(
        name,
        description,
        "instant",
        text => InstantPattern.ExtendedIso.Parse(text) is { Success: true } parsed
            ? parsed.Value
            : throw new BadInputException($"{text} is not an instant; accepted: UTC such as 2026-08-13T04:16:09Z"));

    public static Option<LocalTime?> Time(string name, string description) => Parsed<LocalTime?>(
        name,
        description,
        "HH:MM",
        text => ToTheMinute.Parse(text) is { Success: true } parsed
            ? parsed.Value
            : throw new BadInputException($"{text} is not a time of day; accepted: HH:MM from 00:00 to 23:59"));

    public static Option<int?> Whole(string name, string description, int least, int most) =>
        Parsed<int?>(
            name,
            description,
            FormattableString.Invariant($"{least} to {most}"),
            text =>
                int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var value)
                && value >= least
                && value <= most
                    ? value
                    : throw new BadInputException($"{text} is out of range; accepted: a whole number from {least} to {most}"));

    public static Option<string?> Word(string name, string description, params string[] accepted) =>
        Parsed<string?>(
            name,
            description,
            string.Join('|', accepted) is { Length: <= MostHelp } all ? all : "word",
            text =>
                accepted.Contains(text)
                    ? text
                    : throw new BadInputException($"{text} is not known; accepted: {string.Join(", ", accepted)}"));

    /// <summary>The kind of climate that weather is invented for.</summary>
    public static Option<string?> Climate() =>
        Word(
            "--climate",
            $"Climate of the invented weather: {string.Join(", ", ClimateKinds.Words)}; default {ClimateKinds.Default.Word()}.",
            [.. ClimateKinds.Words]);

    /// <summary>The kind that was chosen.</summary>
    public static ClimateKind KindOf(this ParseResult given, Option<string?> climate) =>
        given.GetValue(climate) is { } word ? ClimateKinds.Of(word)!.Value : ClimateKinds.Default;

    /// <param name="name">With its dashes.</param>
    /// <param name="description">One sentence or two.</param>
    /// <param name="what">What stands after the name: text, file, folder, id.</param>
    public static Option<string?> Text(string name, string description, string what = "text") =>
        new(name) { Description = description, HelpName = what };

    /// <summary>Marks an option that its command cannot do without, for the help.</summary>
    public static Option<T> Required<T>(this Option<T> option)
    {
        option.Description = $"{option.Description!.TrimEnd('.')}{Mark}.";
        return option;
    }

    public static Option<bool> Json() => new("--json") { Description = "One JSON document on standard output." };

    /// <summary>A zone by its id.</summary>
    public static DateTimeZone ZoneOf(string text) =>
        ZonesInUse.Instance.GetZoneOrNull(text)
        ?? throw new BadInputException($"{text} is not a time zone; accepted: an IANA zone such as Africa/Windhoek");

    /// <summary>A date of the calendar, of a night that the sky is computed for.</summary>
    public static LocalDate DateOf(string text) =>
        LocalDatePattern.Iso.Parse(text).TryGetValue(default, out var date) && date >= NightSky.FirstNight && date <= NightSky.LastNight
            ? date
            : throw new BadInputException(
                $"{text} is not a date that exists; accepted: YYYY-MM-DD, {NightSky.FirstNight:R} to {NightSky.LastNight:R}");

    /// <summary>A value that the command cannot do without.</summary>
    public static T Needed<T>(this ParseResult given, Option<T?> option)
        where T : struct => given.GetValue(Marked(option)) ?? throw Missing(option);

    /// <summary>A value that the command cannot do without.</summary>
    public static string Needed(this ParseResult given, Option<string?> option) => given.GetValue(Marked(option)) ?? throw Missing(option);

    /// <summary>A zone that the command cannot do without.</summary>
    public static DateTimeZone Needed(this ParseResult given, Option<DateTimeZone?> option) =>
        given.GetValue(Marked(option)) ?? throw Missing(option);

    // The help and the command never disagree on what is required.
    private static Option<T> Marked<T>(Option<T> option) => option.Description!.Contains("required", StringComparison.Ordinal)
        ? option
        : throw new InvalidOperationException($"The help does not say that {option.Name} is required.");

    private static BadInputException Missing(Option option) =>
        new($"{option.Name} is missing; it gives: {option.Description!.Replace(Mark, "", StringComparison.Ordinal)}");

    public static Option<double?> Number(string name, string description, double least, double most) => Parsed<double?>(
        name,
        description,
        FormattableString.Invariant($"{least} to {most}"),
        text => double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var value) && value >= least && value <= most
            ? value
            : throw new BadInputException(FormattableString.Invariant($"{text} is out of range; accepted: {least} to {most}")));

    private static Option<T> Parsed<T>(string name, string description, string what, Func<string, T> parse) => new(name)
    {
        Description = description,
        HelpName = what,
        CustomParser = result => Parse(result, name, parse),
    };

    private static T? Parse<T>(ArgumentResult result, string name, Func<string, T> parse)
    {
        if (result.Tokens.Count == 0) return default;
        try
        {
            return parse(result.Tokens[0].Value);
        }
        catch (BadInputException refused)
        {
            result.AddError($"{name}: {refused.Message}.");
            return default;
        }
    }
}

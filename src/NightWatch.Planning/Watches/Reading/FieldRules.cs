using System.Text.RegularExpressions;

namespace NightWatch.Planning.Watches.Reading;

/// <summary>What a number may be. The bounds are there to catch slips (a focal length in centimetres), not to forbid odd kit.</summary>
/// <param name="Least">Accepted from here.</param>
/// <param name="Most">Accepted up to here.</param>
/// <param name="Unit">In words; empty for a plain figure.</param>
internal readonly record struct Range(double Least, double Most, string Unit = "")
{
    public bool Holds(double value) => value >= Least && value <= Most;

    public override string ToString() => FormattableString.Invariant($"{Least} to {Most}") + (Unit.Length == 0 ? "" : " " + Unit);
}

/// <summary>What a text may be.</summary>
internal readonly record struct TextRule(Regex Pattern, string Accepted);

/// <summary>The accepted range of every number and the accepted form of every text, by field path; [] stands for any item.</summary>
internal static partial class FieldRules
{
    private static readonly Range Azimuth = new(0, 360, "degrees from north through east");
    private static readonly Range Fraction = new(0, 1);

    public static IReadOnlyDictionary<string, Range> Numbers { get; } = new Dictionary<string, Range>
    {
        ["site.position.latitudeDeg"] = new(-90, 90, "degrees north"),
        ["site.position.longitudeDeg"] = new(-180, 180, "degrees east"),
        ["site.position.elevationM"] = new(-500, 9000, "metres"),
        ["site.measuredSkyBrightness"] = new(14, 22.5, "V mag/arcsec²"),
        ["subject.longitudeDeg"] = new(0, 359.999999, "degrees of galactic longitude"),
        ["subject.rightAscensionDeg"] = new(0, 359.999999, "degrees"),
        ["subject.declinationDeg"] = new(-90, 90, "degrees"),
        ["kit.sensorWidthMm"] = new(3, 120, "mm"),
        ["kit.sensorHeightMm"] = new(2, 120, "mm"),
        ["kit.pixelPitchUm"] = new(0.5, 30, "µm"),
        ["kit.focalLengthMm"] = new(3, 1200, "mm"),
        ["kit.fNumber"] = new(0.7, 32),
        ["kit.iso"] = new(50, 409600),
        ["kit.rawFileMb"] = new(1, 1000, "MB"),
        ["kit.writeMbPerS"] = new(1, 10000, "MB/s"),
        ["kit.cardGb"] = new(1, 100000, "GB"),
        ["kit.batteriesWh[]"] = new(1, 5000, "Wh"),
        ["kit.cameraAndRailW"] = new(0.1, 200, "W"),
        ["kit.dewHeaterW"] = new(0, 100, "W"),
        ["kit.dewHeaterBatteryWh"] = new(1, 5000, "Wh"),
        ["kit.frontElementMm"] = new(5, 300, "mm"),
        ["kit.frontElementKg"] = new(0.005, 5, "kg"),
        ["move.start.azimuthDeg"] = Azimuth,
        ["move.start.altitudeDeg"] = new(-30, 90, "degrees"),
        ["move.start.rollDeg"] = new(-180, 180, "degrees"),
        ["move.end.azimuthDeg"] = Azimuth,
        ["move.end.altitudeDeg"] = new(-30, 90, "degrees"),
        ["move.end.rollDeg"] = new(-180, 180, "degrees"),
        ["move.easeIn"] = new(0, 0.5),
        ["move.easeOut"] = new(0, 0.5),
        ["move.railM"] = new(0, 20, "metres"),
        ["sequence.exposureS"] = new(0.1, 900, "seconds"),
        ["sequence.intervalS"] = new(0.2, 3600, "seconds"),
        ["sequence.moveAndSettleS"] = new(0, 600, "seconds"),
        ["sequence.playbackFps"] = new(1, 240, "frames a second"),
        ["sequence.playbackS"] = new(1, 3600, "seconds"),
        ["sequence.trailPixels"] = new(0.5, 50, "pixels"),
        ["sequence.skyShare"] = new(0.01, 0.9),
        ["sequence.foreground.least"] = Fraction,
        ["sequence.foreground.most"] = Fraction,
        ["limits.minAltitudeDeg"] = new(-5, 85, "degrees"),
        ["limits.usableRunMin"] = new(5, 900, "minutes"),
        ["limits.cloud.caution"] = Fraction,
        ["limits.cloud.stop"] = Fraction,
        ["limits.precipitationMmPerH"] = new(0, 20, "mm/h"),
        ["limits.precipitationProbability.caution"] = Fraction,
        ["limits.precipitationProbability.stop"] = Fraction,
        ["limits.gustMps.caution"] = new(1, 40, "m/s"),
        ["limits.gustMps.stop"] = new(1, 40, "m/s"),
        ["limits.fog.caution"] = Fraction,
        ["limits.fog.stop"] = Fraction,
        ["limits.fogVisibilityM"] = new(50, 20000, "metres"),
        ["limits.thunder.caution"] = Fraction,
        ["limits.thunder.stop"] = Fraction,
        ["limits.darkFullMag"] = new(14, 22.5, "V mag/arcsec²"),
        ["limits.darkNothingMag"] = new(14, 22.5, "V mag/arcsec²"),
        ["limits.longestGapMin"] = new(0, 120, "minutes"),
        ["limits.dewMarginC"] = new(0, 15, "°C"),
        ["limits.skyShareMost"] = new(0.05, 1),
        ["limits.startMarginMin"] = new(0, 600, "minutes"),
        ["limits.endMarginMin"] = new(0, 600, "minutes"),
        ["limits.forecastAgeH"] = new(1, 72, "hours"),
        ["limits.outlookOnlyFromH"] = new(24, 360, "hours"),
        ["outing.driveMin"] = new(0, 1440, "minutes"),
        ["outing.setUpMin"] = new(0, 480, "minutes"),
        ["outing.mostDriveKm"] = new(0, 3000, "km"),
        ["outing.drivesPerLostNight"] = new(1, 10, "drives"),
        ["outing.homeLatitudeDeg"] = new(-90, 90, "degrees north"),
        ["outing.homeLongitudeDeg"] = new(-180, 180, "degrees east"),
        ["letters.leadNights"] = new(1, 5, "nights"),
        ["letters.marginalLeadNights"] = new(1, 5, "nights"),
        ["letters.marginalOutlookProbability"] = Fraction,
    };

    // Noncharacters (Unicode 16, 23.7) are no text: XML, and with it calendars and pages that other programs read, refuses them.
    private const string None = @"\uFDD0-\uFDEF\uFFFE\uFFFF";

    // The last two of every further plane, as the two halves they are written in.
    private const string NoneBeyond =
        @"(?![\s\S]*[\uD83F\uD87F\uD8BF\uD8FF\uD93F\uD97F\uD9BF\uD9FF\uDA3F\uDA7F\uDABF\uDAFF\uDB3F\uDB7F\uDBBF\uDBFF][\uDFFE\uDFFF])";

    private static readonly TextRule Id = new(ShortName(), "1 to 40 lower-case letters, digits and hyphens");
    private static readonly TextRule Line = new(OneLine(), "1 to 200 characters on one line, no noncharacters");

    public static IReadOnlyDictionary<string, TextRule> Texts { get; } = new Dictionary<string, TextRule>
    {
        ["id"] = Id,
        ["subscriber.name"] = new(OneLineOrNothing(), "up to 200 characters on one line, no noncharacters"),
        ["subscriber.address"] = new(MailAddress(), "a mail address such as name@example.org"),
        ["site.id"] = Id,
        ["site.name"] = Line,
        ["site.accessNotes"] = new(Notes(), "up to 2000 characters, no noncharacters"),
        ["subject.name"] = Line,
        ["letters.webhook"] = new(WebAddress(), "an address such as https://home.example.org/nightwatch, up to 500 characters"),
    };

    [GeneratedRegex(@"\Ahttps?://[!-~]{1,490}\z")]
    private static partial Regex WebAddress();

    [GeneratedRegex(@"\A[a-z0-9](?:[a-z0-9-]{0,38}[a-z0-9])?\z")]
    private static partial Regex ShortName();

    [GeneratedRegex($@"\A{NoneBeyond}[^\p{{Cc}}\u2028\u2029{None}]{{1,200}}\z")]
    private static partial Regex OneLine();

    [GeneratedRegex($@"\A{NoneBeyond}[^\p{{Cc}}\u2028\u2029{None}]{{0,200}}\z")]
    private static partial Regex OneLineOrNothing();

    [GeneratedRegex($@"\A{NoneBeyond}[^\x00-\x08\x0B\x0C\x0E-\x1F{None}]{{0,2000}}\z")]
    private static partial Regex Notes();

    [GeneratedRegex(@"\A[^\s@<>(),;:""\p{Cc}]{1,64}@[^\s@<>(),;:""\p{Cc}.]+(?:\.[^\s@<>(),;:""\p{Cc}.]+)*\z")]
    private static partial Regex MailAddress();
}

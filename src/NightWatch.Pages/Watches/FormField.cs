namespace NightWatch.Pages.Watches;

/// <summary>How a field of the form is written in a watch.</summary>
public enum FieldKind
{
    /// <summary>Text as typed.</summary>
    Text,

    /// <summary>Text; nothing typed is null.</summary>
    OptionalText,

    /// <summary>A number.</summary>
    Number,

    /// <summary>A number; nothing typed is null, which means something of its own.</summary>
    OptionalNumber,

    /// <summary>A number of hundredths of what the watch holds.</summary>
    Percent,

    /// <summary>A box ticked or not.</summary>
    Tick,

    /// <summary>Boxes of which any may be ticked.</summary>
    Ticks,

    /// <summary>Numbers with commas or spaces between them.</summary>
    Numbers,
}

/// <summary>A field of the form that is one member of a watch.</summary>
/// <param name="Path">The member: "site.name". It is the field's name in the form too.</param>
/// <param name="Kind">How it is written.</param>
public readonly record struct FormField(string Path, FieldKind Kind)
{
    /// <summary>
    /// All that stand for one member each. Place, sensor, subject and move take several and stand in <see cref="WatchForm"/>.
    /// </summary>
    public static IReadOnlyList<FormField> All { get; } =
    [
        new("site.name", FieldKind.Text),
        new("site.position.elevationM", FieldKind.Number),
        new("site.zone", FieldKind.Text),
        new("site.ground", FieldKind.Text),
        new("site.measuredSkyBrightness", FieldKind.OptionalNumber),
        new("site.accessNotes", FieldKind.OptionalText),
        new("kit.focalLengthMm", FieldKind.Number),
        new("kit.fNumber", FieldKind.Number),
        new("kit.iso", FieldKind.OptionalNumber),
        new("kit.rawFileMb", FieldKind.Number),
        new("kit.cardGb", FieldKind.Number),
        new("kit.batteriesWh", FieldKind.Numbers),
        new("kit.cameraAndRailW", FieldKind.Number),
        new("kit.dewHeaterW", FieldKind.Number),
        new("kit.dewHeaterBatteryWh", FieldKind.OptionalNumber),
        new("sequence.exposureS", FieldKind.OptionalNumber),
        new("sequence.intervalS", FieldKind.OptionalNumber),
        new("sequence.playbackS", FieldKind.OptionalNumber),
        new("sequence.playbackFps", FieldKind.Number),
        new("sequence.foreground.least", FieldKind.Percent),
        new("sequence.foreground.most", FieldKind.Percent),
        new("limits.minAltitudeDeg", FieldKind.Number),
        new("limits.usableRunMin", FieldKind.Number),
        new("limits.precipitationMmPerH", FieldKind.Number),
        new("limits.dryGroundNeeded", FieldKind.Tick),
        new("limits.cloud.caution", FieldKind.Percent),
        new("limits.cloud.stop", FieldKind.Percent),
        new("limits.precipitationProbability.caution", FieldKind.Percent),
        new("limits.precipitationProbability.stop", FieldKind.Percent),
        new("limits.gustMps.caution", FieldKind.Number),
        new("limits.gustMps.stop", FieldKind.Number),
        new("limits.fog.caution", FieldKind.Percent),
        new("limits.fog.stop", FieldKind.Percent),
        new("limits.thunder.caution", FieldKind.Percent),
        new("limits.thunder.stop", FieldKind.Percent),
        new("limits.darkFullMag", FieldKind.OptionalNumber),
        new("limits.darkNothingMag", FieldKind.OptionalNumber),
        new("limits.longestGapMin", FieldKind.Number),
        new("limits.startMarginMin", FieldKind.Number),
        new("limits.endMarginMin", FieldKind.Number),
        new("outing.freeEvenings", FieldKind.Ticks),
        new("outing.driveMin", FieldKind.Number),
        new("outing.setUpMin", FieldKind.Number),
        new("outing.mostDriveKm", FieldKind.Number),
        new("outing.usualWakeTime", FieldKind.Text),
        new("outing.drivesPerLostNight", FieldKind.Number),
        new("letters.leadNights", FieldKind.Number),
        new("letters.eveningAt", FieldKind.Text),
        new("letters.morningAt", FieldKind.Text),
        new("letters.quietFrom", FieldKind.Text),
        new("letters.quietUntil", FieldKind.Text),
        new("letters.units", FieldKind.Text),
        new("letters.marginalOutlookProbability", FieldKind.Percent),
        new("letters.digest", FieldKind.OptionalText),
    ];
}

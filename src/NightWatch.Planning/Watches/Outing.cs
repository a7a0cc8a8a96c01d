using NodaTime;

namespace NightWatch.Planning.Watches;

/// <summary>What it takes to be there.</summary>
public sealed record Outing
{
    /// <summary>Evenings the photographer is free; empty: all.</summary>
    public IReadOnlyList<IsoDayOfWeek> FreeEvenings { get; init; } = [];

    /// <summary>Drive one way, minutes.</summary>
    public double DriveMin { get; init; } = 60;

    /// <summary>From the car to the first test frame, minutes: walk, rail, levelling, framing. In daylight where possible.</summary>
    public double SetUpMin { get; init; } = 60;

    /// <summary>How far the photographer drives for another site, km one way.</summary>
    public double MostDriveKm { get; init; } = 150;

    /// <summary>Where the drive starts; null: unknown, distances between sites are used.</summary>
    public double? HomeLatitudeDeg { get; init; }

    /// <summary>Where the drive starts.</summary>
    public double? HomeLongitudeDeg { get; init; }

    /// <summary>A good night missed costs the photographer as much as this many wasted drives, 1 to 10.</summary>
    public double DrivesPerLostNight { get; init; } = 2;

    /// <summary>When the photographer usually gets up; for the hours awake at the drive home.</summary>
    public LocalTime UsualWakeTime { get; init; } = new(7, 0);
}

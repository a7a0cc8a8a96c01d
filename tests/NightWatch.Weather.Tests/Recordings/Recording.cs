namespace NightWatch.Weather.Tests.Recordings;

/// <summary>The recorded responses; their origin is in the README beside them.</summary>
internal static class Recording
{
    public const string MetNorway = "met-norway-complete-51.5,-0.1.json";
    public const string NwsGridpoint = "nws-gridpoint-30.0,-85.0.json";
    public const string NwsPoints = "nws-points.json";
    public const string Aerodromes = "awc-arizona-2026-04-19T0401Z.json";

    public const string OpenMeteoOlderNames = "open-meteo/new-york-2024-04-28_0500.json";
    public const string OpenMeteoClockChange = "open-meteo/new-york-2025-03-08_1200.json";
    public const string OpenMeteoGatewayPage = "open-meteo/new-york-2025-03-09_1800.json";
    public const string OpenMeteoOverloaded = "open-meteo/new-york-2026-07-26_2200.json";
    public const string OpenMeteoDailyLimit = "open-meteo/new-york-2026-08-21_0000.json";
    public const string OpenMeteoAlaska = "open-meteo/alaska-hourly.json";

    public static byte[] Bytes(string name) => File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, "Recordings", name));
}

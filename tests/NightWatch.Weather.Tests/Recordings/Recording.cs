namespace NightWatch.Weather.Tests.Recordings;

/// <summary>The recorded responses; their origin is in the README beside them.</summary>
internal static class Recording
{
    public const string MetNorway = "met-norway-complete-51.5,-0.1.json";
    public const string NwsGridpoint = "nws-gridpoint-30.0,-85.0.json";
    public const string NwsPoints = "nws-points.json";
    public const string Aerodromes = "awc-arizona-2026-04-19T0401Z.json";

    public static byte[] Bytes(string name) => File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, "Recordings", name));
}

namespace NightWatch.Pages.Watches;

/// <summary>Sensors by their dimensions, mm: the usual ones, width by height.</summary>
internal static class SensorSizes
{
    /// <summary>Another one.</summary>
    public const string Other = "other";

    public static IReadOnlyList<(double WidthMm, double HeightMm)> Usual { get; } =
    [(36, 24), (23.5, 15.6), (22.3, 14.9), (17.3, 13), (13.2, 8.8), (43.8, 32.9)];

    /// <summary>"36x24": its name in the form.</summary>
    public static string Key(double widthMm, double heightMm) => FormattableString.Invariant($"{widthMm}x{heightMm}");
}

using System.Globalization;
using NightWatch.Weather.Feeds;

namespace NightWatch.Weather.Http;

/// <summary>
/// Coordinates as the feeds accept them: invariant, at most four decimals (11 m); more is refused or redirected by two of them.
/// </summary>
internal static class Coordinates
{
    /// <summary>Latitude or longitude, degrees.</summary>
    public static string Degrees(double deg) => Plain(Math.Round(deg, 4)).ToString("0.####", CultureInfo.InvariantCulture);

    /// <summary>Whole metres.</summary>
    public static string Metres(double metres) => Plain(Math.Round(metres)).ToString("0", CultureInfo.InvariantCulture);

    /// <summary>The place, or the exception for the caller who made it up.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not a place on Earth.</exception>
    public static ForecastPlace Checked(ForecastPlace place) =>
        place.LatitudeDeg is >= -90 and <= 90 && place.LongitudeDeg is >= -180 and <= 180 && place.ElevationM is >= -500 and <= 9000
            ? place
            : throw new ArgumentOutOfRangeException(
                nameof(place), place, "Accepted: latitude -90 to 90, longitude -180 to 180, elevation -500 to 9000 m.");

    /// <summary>Without the sign of a zero.</summary>
    private static double Plain(double value) => value == 0 ? 0 : value;
}

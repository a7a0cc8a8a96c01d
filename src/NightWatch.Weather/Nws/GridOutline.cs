using System.Text.Json;
using NightWatch.Weather.Feeds;

namespace NightWatch.Weather.Nws;

/// <summary>The outline of a grid cell, about 2.5 km wide.</summary>
internal static class GridOutline
{
    private const double KmPerDeg = 111.2;

    /// <summary>A little more than a cell: cells are skewed, and a site may lie on the edge.</summary>
    private const double FarthestKm = 6;

    /// <summary>Its corners, the closing one left out; empty for what is no polygon.</summary>
    public static IReadOnlyList<(double LatitudeDeg, double LongitudeDeg)> Corners(JsonElement root)
    {
        if (root.ObjectOrNull("geometry")?.Member("coordinates") is not { ValueKind: JsonValueKind.Array } rings
            || rings.GetArrayLength() == 0 || rings[0].ValueKind != JsonValueKind.Array)
            return [];
        var corners = new List<(double, double)>();
        foreach (var corner in rings[0].EnumerateArray())
        {
            if (corner.ValueKind != JsonValueKind.Array || corner.GetArrayLength() < 2)
                return [];
            if (
                ((JsonElement?)corner[0]).NumberOrNull() is not { } longitude
                || ((JsonElement?)corner[1]).NumberOrNull() is not { } latitude
                || Math.Abs(latitude) > 90
                || Math.Abs(longitude) > 180)
                return [];
            corners.Add((latitude, longitude));
        }

        return corners.Count > 1 && corners[0] == corners[^1] ? corners[..^1] : corners;
    }

    /// <summary>Whether a cell can be the one of a place; grids are renumbered without notice.</summary>
    public static bool IsNear(Series.ForecastCell cell, ForecastPlace place)
    {
        var north = (cell.LatitudeDeg - place.LatitudeDeg) * KmPerDeg;
        var east = (cell.LongitudeDeg - place.LongitudeDeg) * KmPerDeg * Math.Cos(double.DegreesToRadians(place.LatitudeDeg));
        return Math.Sqrt(north * north + east * east) <= FarthestKm;
    }
}

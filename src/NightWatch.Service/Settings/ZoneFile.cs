using NightWatch.Places;
using NodaTime.TimeZones;
using NodaTime.Utility;

namespace NightWatch.Service.Settings;

/// <summary>
/// Zone data from a file (NodaTime's .nzd, as nodatime.org publishes it for each release of the tz database) in place of those inside the
/// program: governments change their clocks at shorter notice than programs are built.
/// </summary>
internal static class ZoneFile
{
    /// <summary>Takes a file into use; an empty name leaves what the program holds.</summary>
    public static void Use(string path)
    {
        if (path.Length > 0 && Fault(path) is null) ZonesInUse.Instance.Take(new DateTimeZoneCache(Read(path)));
    }

    /// <returns>One sentence; null: the file can be used.</returns>
    public static string? Fault(string path)
    {
        try
        {
            return Read(path).GetIds().Any() ? null : $"Service:ZoneFile: {path} holds no zones.";
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            return $"Service:ZoneFile: {path} cannot be read ({fault.Message.TrimEnd('.')}).";
        }
        catch (Exception fault) when (fault is InvalidNodaDataException or ArgumentException or InvalidOperationException)
        {
            return $"Service:ZoneFile: {path} is not zone data; accepted: an .nzd file of NodaTime, or empty.";
        }
    }

    private static TzdbDateTimeZoneSource Read(string path)
    {
        using var file = new MemoryStream(File.ReadAllBytes(path));
        return TzdbDateTimeZoneSource.FromStream(file);
    }
}

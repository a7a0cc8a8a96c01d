using NightWatch.Service.Settings;
using NodaTime;

namespace NightWatch.Service.Commands.Checks;

/// <summary>The zone data are sound and not too old: governments change their clocks at short notice.</summary>
internal static class ZoneCheck
{
    private const int MostYears = 2;

    public static Task<Finding> RunAsync(AllSettings settings, Shell shell, CancellationToken stop)
    {
        var version = DateTimeZoneProviders.Tzdb.VersionId;
        var year = version.Split(' ').Select(word => word.Length >= 4 && int.TryParse(word.AsSpan(0, 4), out var parsed) ? parsed : (int?)null).FirstOrDefault(parsed => parsed is > 1990);
        var now = shell.Clock.GetCurrentInstant().InUtc().Year;
        return Task.FromResult(year is null || now - year <= MostYears
            ? new Finding("zone data", true, $"{version}.")
            : new Finding("zone data", false, $"{version} is more than {MostYears} years old; bring the program up to date."));
    }
}

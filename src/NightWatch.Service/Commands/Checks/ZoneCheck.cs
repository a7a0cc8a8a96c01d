using NightWatch.Places;

namespace NightWatch.Service.Commands.Checks;

/// <summary>The zone data are sound and not too old: governments change their clocks at short notice.</summary>
internal static class ZoneCheck
{
    private const int MostYears = 2;

    public static Task<IReadOnlyList<Finding>> RunAsync(CheckBench bench, CancellationToken stop)
    {
        var version = ZonesInUse.Instance.VersionId;
        var from = bench.Settings.Service.ZoneFile is { Length: > 0 } file ? $"from {file}" : "inside the program";
        var year = version
            .Split(' ')
            .Select(word => word.Length >= 4 && int.TryParse(word.AsSpan(0, 4), out var parsed) ? parsed : (int?)null)
            .FirstOrDefault(parsed => parsed is > 1990);
        var old = year is { } known && bench.Shell.Clock.GetCurrentInstant().InUtc().Year - known >= MostYears;
        return Task.FromResult<IReadOnlyList<Finding>>([
            old
                ? Finding.Warning(
                    "zone data",
                    $"{version} ({from}) is {MostYears} years old; take a newer file into use with Service:ZoneFile, or bring the " +
                    "program up to date.")
                : Finding.Ok("zone data", $"{version} ({from})."),
        ]);
    }
}

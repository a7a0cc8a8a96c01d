using NightWatch.Places;
using NightWatch.Planning.Watches;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.Observations;
using NodaTime;

namespace NightWatch.Watchkeeping.Records;

/// <summary>The reports of the aerodrome nearest a site.</summary>
/// <param name="Station">ICAO indicator.</param>
/// <param name="Km">From the site.</param>
/// <param name="Reports">Of it.</param>
internal sealed record NearReports(string Station, double Km, IReadOnlyList<AerodromeReport> Reports);

/// <summary>
/// Finds the aerodrome nearest a site and gets its reports; what the host refuses is logged and is no exception anywhere.
/// </summary>
internal sealed partial class NearestAerodrome(
    ObservationsOptions options, IClock clock, ILogger<NearestAerodrome> log, AerodromeFeed? feed = null)
{
    /// <summary>Somebody may be asked at all.</summary>
    public bool IsOn => feed is not null && options.AerodromeKm > 0;

    /// <summary>The reports since an instant.</summary>
    /// <returns>Null: nobody is asked, there is no station within reach, or the host gave none.</returns>
    public async Task<NearReports?> SinceAsync(Site site, Instant since, CancellationToken cancellationToken)
    {
        if (!IsOn || await NearestAsync(site, cancellationToken) is not { } nearest) return null;
        var hours = (int)Math.Ceiling((clock.GetCurrentInstant() - since).TotalHours) + 1;
        var answer = Noted(await feed!.OfAsync([nearest.Station], hours, cancellationToken));
        return answer.Count == 0 ? null : new NearReports(nearest.Station, nearest.Km, answer);
    }

    private async Task<(string Station, double Km)?> NearestAsync(Site site, CancellationToken cancellationToken)
    {
        var stations = options.Stations();
        var place = new ForecastPlace(site.Position.LatitudeDeg, site.Position.LongitudeDeg, site.Position.ElevationM);
        var around = Noted(
            stations.Count > 0
                ? await feed!.OfAsync(stations, 2, cancellationToken)
                : await feed!.AroundAsync(place, options.AerodromeKm, cancellationToken));
        var near = around
            .Where(report => stations.Count == 0 || stations.Contains(report.Station))
            .Select(report =>
                (report.Station, GreatCircle.To(place.LatitudeDeg, place.LongitudeDeg, report.LatitudeDeg, report.LongitudeDeg).Km))
            .Where(station => station.Km <= options.AerodromeKm)
            .ToList();
        return near.Count == 0 ? null : near.MinBy(station => station.Km);
    }

    private IReadOnlyList<AerodromeReport> Noted(AerodromeAnswer answer)
    {
        if (answer.Why is { } why) LogNone(why);
        return answer.Reports;
    }

    [LoggerMessage(221, LogLevel.Warning, "No aerodrome reports: {Why}")]
    private partial void LogNone(string why);
}

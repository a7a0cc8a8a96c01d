using System.Collections.ObjectModel;
using NodaTime;

namespace NightWatch.Places;

/// <summary>
/// The zones that this process reads zone ids with: those inside NodaTime, or the ones that the program named before it read its first.
/// </summary>
/// <remarks>
/// One for the process, as a zone of one version of the data and the same zone of another are not equal. Who reads JSON holds this
/// and looks a zone up when it reads one, so that its options may be made before the program has read its settings.
/// </remarks>
public sealed class ZonesInUse : IDateTimeZoneProvider
{
    private IDateTimeZoneProvider zones = DateTimeZoneProviders.Tzdb;

    private ZonesInUse()
    {
    }

    /// <summary>The one.</summary>
    public static ZonesInUse Instance { get; } = new();

    /// <inheritdoc/>
    public string VersionId => zones.VersionId;

    /// <inheritdoc/>
    public ReadOnlyCollection<string> Ids => zones.Ids;

    /// <inheritdoc/>
    public DateTimeZone this[string id] => zones[id];

    /// <summary>Takes other zone data into use, at the start of the program.</summary>
    public void Take(IDateTimeZoneProvider other) => zones = other;

    /// <inheritdoc/>
    public DateTimeZone GetSystemDefault() => zones.GetSystemDefault();

    /// <inheritdoc/>
    public DateTimeZone? GetZoneOrNull(string id) => zones.GetZoneOrNull(id);
}

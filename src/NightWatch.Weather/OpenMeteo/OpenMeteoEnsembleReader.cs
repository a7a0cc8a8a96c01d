using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Weather.OpenMeteo;

/// <summary>Reads answers of Open-Meteo's ensemble service for one location and one model.</summary>
/// <remarks>
/// Format: https://open-meteo.com/en/docs/ensemble-api. The bare column is the control, member 0; how many members there are is read off
/// the columns. A member without a value of total cloud is not counted.
/// </remarks>
public sealed partial class OpenMeteoEnsembleReader : IEnsembleReader
{
    /// <inheritdoc/>
    public string FeedId => "open-meteo-ensemble";

    /// <inheritdoc/>
    public ImmutableArray<ForecastSeries> ReadMembers(ReadOnlyMemory<byte> body, Instant retrievedAt) =>
        FeedJson.Read(
            body,
            "Open-Meteo ensemble",
            root =>
            {
                var table = HourlyTable.Open(root);
                var members = ImmutableArray.CreateBuilder<ForecastSeries>();
                foreach (var (number, suffix) in Members(table))
                {
                    var builder = new ForecastSeriesBuilder();
                    HourlyColumns.AddTo(builder, table, suffix);
                    var member = builder.Build(FeedId, "mixed", null, retrievedAt, OpenMeteoReader.Attribution, table.Cell, number);
                    if (member.Instants.ContainsKey(InstantQuantity.CloudAreaFraction)) members.Add(member);
                }

                return members.Count > 0
                    ? members.ToImmutable()
                    : throw new ForecastFormatException("Open-Meteo ensemble: no member has a value of total cloud.");
            });

    private static SortedDictionary<int, string> Members(HourlyTable table)
    {
        var members = new SortedDictionary<int, string>();
        foreach (var column in table.Columns)
        {
            var match = CloudColumn().Match(column);
            if (!match.Success)
                continue;
            var number = match.Groups["n"].Success ? int.Parse(match.Groups["n"].ValueSpan, CultureInfo.InvariantCulture) : 0;
            members.TryAdd(number, match.Groups["suffix"].Value);
        }

        return members;
    }

    [GeneratedRegex(@"^cloud_cover(?<suffix>(_member(?<n>[0-9]{1,4}))?)$", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture)]
    private static partial Regex CloudColumn();
}

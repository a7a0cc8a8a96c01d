using System.Collections.Immutable;
using NodaTime;

namespace NightWatch.Weather.Series;

/// <summary>A value with its making. <see cref="Value"/> is null exactly when <see cref="Quality"/> is Missing.</summary>
/// <param name="Value">In the quantity's unit; null when unknown. Unknown is never zero.</param>
/// <param name="Quality">How it came about.</param>
/// <param name="NativeStep">The feed's own step here (1 h, 3 h, 6 h); zero when missing.</param>
public readonly record struct Reading(double? Value, Quality Quality, Duration NativeStep)
{
    /// <summary>The unknown value; also the default.</summary>
    public static Reading Unknown => default;
}

/// <summary>One value at an instant.</summary>
public readonly record struct InstantPoint(Instant At, double Value, Quality Quality = Quality.Direct);

/// <summary>One value over <c>[Start, End)</c>.</summary>
public readonly record struct PeriodPoint(Instant Start, Instant End, double Value, Quality Quality = Quality.Direct);

/// <summary>Where the data come from and what must stand beside them wherever they are shown.</summary>
/// <param name="Text">For example "Data from MET Norway".</param>
/// <param name="Link">Where it leads.</param>
/// <param name="Licence">Name of the data licence.</param>
public sealed record Attribution(string Text, Uri Link, string Licence)
{
    /// <summary>The licence's own text, for those that want it named; null for the others.</summary>
    public Uri? LicenceLink { get; init; }
}

/// <summary>The place a feed's answer belongs to (its grid cell), and its height where the feed says it.</summary>
public readonly record struct ForecastCell(double LatitudeDeg, double LongitudeDeg, double? ElevationM);

/// <summary>
/// A forecast in the service's own words: one feed, one place, one run. Values not in the tables are unknown.
/// </summary>
/// <remarks>
/// Points of a quantity are ascending in time and without doubles; periods of a quantity do not overlap. Built through
/// <see cref="ForecastSeriesBuilder"/>, which sorts, drops doubles and refuses absurd values.
/// </remarks>
public sealed partial class ForecastSeries
{
    /// <summary>The kept answer that it stands in; null: it is not kept.</summary>
    public long? Id { get; init; }

    /// <summary>Which feed: "met-norway", "open-meteo", "nws", "fake".</summary>
    public required string FeedId { get; init; }

    /// <summary>The model, or "mixed".</summary>
    public required string ModelId { get; init; }

    /// <summary>Number of the ensemble member, 0 for the control; null for a forecast that is no member.</summary>
    public int? Member { get; init; }

    /// <summary>When the run was issued; null where the feed does not say.</summary>
    public Instant? IssuedAt { get; init; }

    /// <summary>When we fetched it (or it was last confirmed unchanged).</summary>
    public required Instant RetrievedAt { get; init; }

    /// <summary>What must be shown with the data.</summary>
    public required Attribution Attribution { get; init; }

    /// <summary>The feed's own cell.</summary>
    public required ForecastCell Cell { get; init; }

    /// <summary>Instant values by quantity.</summary>
    public required ImmutableDictionary<InstantQuantity, ImmutableArray<InstantPoint>> Instants { get; init; }

    /// <summary>Period values by quantity.</summary>
    public required ImmutableDictionary<PeriodQuantity, ImmutableArray<PeriodPoint>> Periods { get; init; }

    /// <summary>The same as it is kept, or as it was when it had last been confirmed at another time.</summary>
    public ForecastSeries KeptAs(long? id, Instant retrievedAt) => new()
    {
        Id = id,
        FeedId = FeedId,
        ModelId = ModelId,
        Member = Member,
        IssuedAt = IssuedAt,
        RetrievedAt = retrievedAt,
        Attribution = Attribution,
        Cell = Cell,
        Instants = Instants,
        Periods = Periods,
    };
}

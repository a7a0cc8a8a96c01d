using System.Collections.Immutable;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.Packing;
using NightWatch.Weather.Series;

namespace NightWatch.Weather.Fetching;

/// <summary>A kept answer, not yet read.</summary>
/// <param name="Id">Names it in the verdicts.</param>
/// <param name="KeptUnder">The feed, or the id of its members, see <see cref="MembersId"/>.</param>
/// <param name="Head">For the next conditional request; RetrievedAt is the last time the feed confirmed it.</param>
/// <param name="Packed">What it says, see <see cref="SeriesPack"/>; empty in rows of an earlier version.</param>
/// <param name="OldBody">In those rows: the feed's own bytes; else empty.</param>
public sealed record KeptAnswer(long Id, string KeptUnder, FetchedHead Head, ReadOnlyMemory<byte> Packed, ReadOnlyMemory<byte> OldBody)
{
    /// <summary>What it says: one series, or the members.</summary>
    /// <exception cref="ForecastFormatException">It cannot be read; the message says why.</exception>
    public ImmutableArray<ForecastSeries> Read()
    {
        if (!Packed.IsEmpty) return SeriesPack.Unpack(Packed.Span, Id, Head.RetrievedAt);
        ImmutableArray<ForecastSeries> read = MembersId.IsOne(KeptUnder)
            ? ForecastReaders.ForEnsemble(MembersId.FeedOf(KeptUnder)).ReadMembers(OldBody, Head.RetrievedAt)
            : [ForecastReaders.For(KeptUnder).Read(OldBody, Head.RetrievedAt)];
        return [.. read.Select(series => series.KeptAs(Id, Head.RetrievedAt))];
    }
}

using System.Collections.Immutable;
using System.IO.Compression;
using System.Security.Cryptography;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Weather.Packing;

/// <summary>
/// A forecast as it is kept: the series of one answer (one, or the members of an ensemble) in columns, without loss. Every value comes back
/// as the double it was, every time to 100 ns.
/// </summary>
/// <remarks>
/// A pack is the byte 1 (the version), the length of what follows unpacked (number), the first four bytes of its SHA-256, and that,
/// compressed by Brotli. A number is seven bits a byte, the lowest first, the high bit set on all bytes but the last; a signed number n is
/// 2n or, below zero, −2n − 1; a text is its length in bytes and UTF-8. Unpacked there are, each table and list led by its length:
/// <list type="number">
/// <item>texts, named below by their place; 0 is the empty one;</item>
/// <item>axes: the first time (ticks since 1970, signed), then stretches of equal steps (how many, step in ticks);</item>
/// <item>series: feed, model, text, link, licence and licence's link (texts), member + 1 (0: none), time of issue (1 and signed ticks, or
/// 0), latitude, longitude (doubles), height (1 and a double, or 0), the columns of instants, the columns of periods.</item>
/// </list>
/// A column is the quantity's name (text), its axis (of periods two: starts and ends), the stretches of equal quality (quality's name,
/// how many) and the values, see <see cref="ValueColumn"/>. The time of retrieval is no part of it, since a confirmation moves it. A
/// column of a quantity that this version does not know is passed over.
/// </remarks>
public static class SeriesPack
{
    private const byte Version = 1;

    /// <summary>Quality 5 of 11 is a tenth larger than the best and thirty times as fast.</summary>
    private const int Effort = 5;

    /// <summary>A window of 256 kB: a member's columns are alike within that.</summary>
    private const int WindowBits = 18;

    /// <summary>A changed byte must not become weather.</summary>
    private const int SumBytes = 4;

    /// <summary>No answer is a tenth as large; a broken length must not ask for gigabytes.</summary>
    private const int MostBytes = 64 << 20;

    /// <summary>Packs the series of one answer.</summary>
    public static byte[] Pack(IReadOnlyList<ForecastSeries> series)
    {
        ArgumentNullException.ThrowIfNull(series);
        var plain = new SeriesWriter().Write(series);
        var head = new PackWriter();
        head.Byte(Version);
        head.Number((ulong)plain.Length);
        head.Bytes(SumOf(plain));
        var packed = new byte[head.Written.Length + BrotliEncoder.GetMaxCompressedLength(plain.Length)];
        head.Written.CopyTo(packed);
        if (!BrotliEncoder.TryCompress(plain, packed.AsSpan(head.Written.Length), out var length, Effort, WindowBits))
            throw new InvalidOperationException("A forecast does not fit into the room that its compressor asked for.");
        return packed[..(head.Written.Length + length)];
    }

    /// <summary>The series of a pack.</summary>
    /// <param name="packed">As <see cref="Pack"/> made it.</param>
    /// <param name="id">Under which it is kept.</param>
    /// <param name="retrievedAt">When it was last confirmed.</param>
    /// <exception cref="ForecastFormatException">It is no pack, not whole, or of a newer version.</exception>
    public static ImmutableArray<ForecastSeries> Unpack(ReadOnlySpan<byte> packed, long? id, Instant retrievedAt)
    {
        var head = new PackReader(packed);
        if (head.Byte() is var version and not Version)
            throw new ForecastFormatException($"A kept forecast is of version {version}; this program reads {Version}.");
        var length = head.Count(MostBytes);
        var sum = head.Bytes(SumBytes);
        var plain = GC.AllocateUninitializedArray<byte>(length);
        if (!BrotliDecoder.TryDecompress(head.Rest, plain, out var written) || written != length || !sum.SequenceEqual(SumOf(plain)))
            throw new ForecastFormatException("A kept forecast is damaged.");
        return new SeriesReader(plain).Read(id, retrievedAt);
    }

    private static ReadOnlySpan<byte> SumOf(ReadOnlySpan<byte> plain) => SHA256.HashData(plain).AsSpan(0, SumBytes);
}

using System.Buffers.Binary;
using System.Text;
using NightWatch.Weather.Feeds;

namespace NightWatch.Weather.Packing;

/// <summary>Reads what <see cref="PackWriter"/> wrote; every step checks that there is enough left.</summary>
internal ref struct PackReader(ReadOnlySpan<byte> bytes)
{
    private ReadOnlySpan<byte> left = bytes;

    public readonly ReadOnlySpan<byte> Rest => left;

    public byte Byte()
    {
        if (left.IsEmpty) throw new ForecastFormatException("A kept forecast ends too early.");
        var taken = left[0];
        left = left[1..];
        return taken;
    }

    public ReadOnlySpan<byte> Bytes(int count)
    {
        if ((uint)count > (uint)left.Length) throw new ForecastFormatException("A kept forecast ends too early.");
        var taken = left[..count];
        left = left[count..];
        return taken;
    }

    public ulong Number()
    {
        ulong value = Byte();
        if (value < 0x80) return value;
        value &= 0x7F;
        for (var shift = 7; shift < 64; shift += 7)
        {
            var next = Byte();
            value |= (ulong)(next & 0x7F) << shift;
            if (next < 0x80) return value;
        }

        throw new ForecastFormatException("A kept forecast holds a number that does not end.");
    }

    /// <summary>How many of something follow.</summary>
    /// <exception cref="ForecastFormatException">More than can be.</exception>
    public int Count(int most) =>
        Number() is var count && count <= (ulong)most
            ? (int)count
            : throw new ForecastFormatException($"A kept forecast holds {count} of something; at most {most} can be.");

    public long Signed()
    {
        var value = Number();
        return (long)(value >> 1) ^ -(long)(value & 1);
    }

    public double Double() => BinaryPrimitives.ReadDoubleLittleEndian(Bytes(sizeof(double)));

    public string Text() => Encoding.UTF8.GetString(Bytes(Count(left.Length)));
}

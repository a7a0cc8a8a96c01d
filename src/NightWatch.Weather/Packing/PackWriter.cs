using System.Buffers;
using System.Buffers.Binary;
using System.Text;

namespace NightWatch.Weather.Packing;

/// <summary>Numbers, doubles and texts one after the other. See <see cref="SeriesPack"/>.</summary>
internal sealed class PackWriter
{
    private readonly ArrayBufferWriter<byte> buffer = new(1024);

    public ReadOnlySpan<byte> Written => buffer.WrittenSpan;

    public void Byte(byte value)
    {
        buffer.GetSpan(1)[0] = value;
        buffer.Advance(1);
    }

    public void Bytes(ReadOnlySpan<byte> bytes) => buffer.Write(bytes);

    /// <summary>Seven bits a byte, the lowest first.</summary>
    public void Number(ulong value)
    {
        for (; value >= 0x80; value >>= 7) Byte((byte)(value | 0x80));
        Byte((byte)value);
    }

    public void Count(int value) => Number((ulong)value);

    /// <summary>Small either side of zero stays short.</summary>
    public void Signed(long value) => Number((ulong)(value << 1) ^ (ulong)(value >> 63));

    public void Double(double value)
    {
        BinaryPrimitives.WriteDoubleLittleEndian(buffer.GetSpan(sizeof(double)), value);
        buffer.Advance(sizeof(double));
    }

    public void Text(string text)
    {
        Count(Encoding.UTF8.GetByteCount(text));
        Encoding.UTF8.GetBytes(text, buffer);
    }
}

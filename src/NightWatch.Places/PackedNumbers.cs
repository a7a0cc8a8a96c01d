using System.IO.Compression;
using System.Text;

namespace NightWatch.Places;

/// <summary>
/// Reads a bundled table from its beginning: numbers of seven bits a byte, the lowest first (LEB128), and bytes between them.
/// </summary>
internal sealed class PackedNumbers(byte[] content)
{
    private int at;

    /// <summary>Opens a table that is embedded in this program, packed by Brotli (RFC 7932).</summary>
    /// <exception cref="InvalidOperationException">There is none of that name.</exception>
    public static PackedNumbers Embedded(string resource)
    {
        using var packed = typeof(PackedNumbers).Assembly.GetManifestResourceStream(resource)
            ?? throw new InvalidOperationException($"{resource} is missing from the program.");
        using var unpacked = new MemoryStream();
        using (var brotli = new BrotliStream(packed, CompressionMode.Decompress)) brotli.CopyTo(unpacked);
        return new PackedNumbers(unpacked.ToArray());
    }

    /// <summary>The next number.</summary>
    public int Next()
    {
        var value = 0;
        for (var shift = 0; ; shift += 7)
        {
            var part = content[at++];
            value |= (part & 0x7F) << shift;
            if (part < 0x80) return value;
        }
    }

    /// <summary>So many bytes.</summary>
    public ReadOnlySpan<byte> Bytes(int count)
    {
        at += count;
        return content.AsSpan(at - count, count);
    }

    /// <summary>So many letters of ASCII.</summary>
    public string Text(int length) => Encoding.ASCII.GetString(Bytes(length));

    /// <summary>All that is left.</summary>
    public byte[] Rest() => Bytes(content.Length - at).ToArray();
}

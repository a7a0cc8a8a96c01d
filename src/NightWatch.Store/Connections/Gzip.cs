using System.IO.Compression;

namespace NightWatch.Store.Connections;

/// <summary>Bodies are kept compressed: forecasts and letters shrink to a tenth.</summary>
internal static class Gzip
{
    public static byte[] Compress(ReadOnlyMemory<byte> bytes)
    {
        using var packed = new MemoryStream();
        using (var gzip = new GZipStream(packed, CompressionLevel.Fastest)) gzip.Write(bytes.Span);
        return packed.ToArray();
    }

    public static ReadOnlyMemory<byte> Decompress(byte[] packed)
    {
        using var gzip = new GZipStream(new MemoryStream(packed), CompressionMode.Decompress);
        using var bytes = new MemoryStream();
        gzip.CopyTo(bytes);
        return bytes.ToArray();
    }
}

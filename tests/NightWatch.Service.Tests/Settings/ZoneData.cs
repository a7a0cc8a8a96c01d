using System.Text;
using NodaTime;

namespace NightWatch.Service.Tests.Settings;

/// <summary>NodaTime's data as a file, as nodatime.org publishes it.</summary>
internal static class ZoneData
{
    /// <param name="folder">Where.</param>
    /// <param name="changes">Texts replaced by others of the same length.</param>
    public static string Write(string folder, params (string Old, string New)[] changes)
    {
        using var inside = typeof(DateTimeZone).Assembly.GetManifestResourceStream("NodaTime.TimeZones.Tzdb.nzd")!;
        using var bytes = new MemoryStream();
        inside.CopyTo(bytes);
        var text = Encoding.Latin1.GetString(bytes.ToArray());
        foreach (var (old, @new) in changes)
        {
            Assert.Equal(old.Length, @new.Length);
            Assert.Contains(old, text, StringComparison.Ordinal);
            text = text.Replace(old, @new, StringComparison.Ordinal);
        }

        var file = Path.Combine(folder, "zones.nzd");
        File.WriteAllBytes(file, Encoding.Latin1.GetBytes(text));
        return file;
    }
}

using NightWatch.Pages.Subscribers;
using NightWatch.Places;
using NightWatch.Planning.SkyBrightness;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Places;
using NightWatch.Words;
using NodaTime;

namespace NightWatch.Pages.Watches;

/// <summary>A new watch with every default, to write a form over.</summary>
internal static class BlankWatch
{
    private const int SlugMost = 24;

    /// <summary>At a place that has been found.</summary>
    public static Watch At(double latitudeDeg, double longitudeDeg, string name)
    {
        var zone = ZonesInUse.Instance.GetZoneOrNull(ZoneMap.Bundled.At(latitudeDeg, longitudeDeg)) ?? DateTimeZone.Utc;
        var id = IdOf(name);
        return new Watch
        {
            Id = id,
            Subscriber = new Subscriber("", "nobody@example.org"),
            Site = new Site { Id = id, Name = name, Position = new GeoPosition(latitudeDeg, longitudeDeg), Zone = zone },
        };
    }

    /// <summary>The form of a new watch: the elevation is asked, not assumed.</summary>
    public static WatchForm FormAt(double latitudeDeg, double longitudeDeg, double? elevationM, string name)
    {
        var form = WatchForm.Of(At(latitudeDeg, longitudeDeg, name));
        form.Values["site.position.elevationM"] = elevationM is { } metres ? FormattableString.Invariant($"{metres:0}") : "";
        form.Values["megapixels"] = "24";
        return form;
    }

    /// <summary>"salt-pan-k3v9x2ab": says which, and cannot be guessed.</summary>
    public static string IdOf(string name)
    {
        var letters = new string([.. name.ToLowerInvariant().Select(c => char.IsAsciiLetterOrDigit(c) ? c : '-')]);
        var slug = string.Join('-', letters.Split('-', StringSplitOptions.RemoveEmptyEntries));
        if (slug.Length > SlugMost) slug = slug[..SlugMost].TrimEnd('-');
        return slug.Length == 0 ? $"watch-{Tokens.Letters(10)}" : $"{slug}-{Tokens.Letters(10)}";
    }

    /// <summary>What the sky there is taken for until it is measured, with its uncertainty.</summary>
    public static string SkyHint(GeoPosition position)
    {
        var glow = SiteSkyGlow.Of(position, null);
        var (darkest, brightest) = glow.ZenithRange;
        return Speech.ToAnybody.Language.SkyTaken((glow.ZenithMag, darkest, brightest));
    }
}

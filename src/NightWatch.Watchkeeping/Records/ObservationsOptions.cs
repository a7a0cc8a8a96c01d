using NightWatch.Weather.Observations;

namespace NightWatch.Watchkeeping.Records;

/// <summary>Section "Observations": what the service holds its calls against, besides the debriefs.</summary>
public sealed class ObservationsOptions
{
    public const string Section = "Observations";

    /// <summary>Take the feed's own later forecast runs as an outcome where nobody else can say.</summary>
    public bool LaterRuns { get; set; } = true;

    /// <summary>Ask for the reports of the nearest aerodrome within so many km of a site; 0: never.</summary>
    public double AerodromeKm { get; set; }

    /// <summary>Only these aerodromes, ICAO indicators, comma-separated; empty: any.</summary>
    public string Aerodromes { get; set; } = "";

    /// <summary>Address of the reports; empty: the Aviation Weather Center's own.</summary>
    public string AerodromeUrl { get; set; } = "";

    /// <summary>Learn chances from the record, and use them where that is proven to be better on nights not seen.</summary>
    public bool Calibrate { get; set; } = true;

    /// <summary>The aerodromes that may be asked; empty: any.</summary>
    public IReadOnlyList<string> Stations() =>
        Aerodromes.ToUpperInvariant().Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);

    /// <summary>What is wrong, one sentence a fault, each naming its key; empty: nothing.</summary>
    /// <param name="contact">Whoever runs the installation, as the feeds are told.</param>
    public IEnumerable<string> Faults(string contact)
    {
        if (!(AerodromeKm is >= 0 and <= 150))
            yield return FormattableString.Invariant($"Observations:AerodromeKm is {AerodromeKm}; accepted: 0 (never) to 150.");
        if (AerodromeKm > 0 && contact.Length == 0)
            yield return "Observations:AerodromeKm is set, but Feeds:Contact is not; accepted: a mail address or web page of whoever " +
                "runs this installation.";
        if (Stations().FirstOrDefault(station => station.Length != 4 || !station.All(char.IsAsciiLetterOrDigit)) is { } odd)
            yield return $"Observations:Aerodromes has '{odd}'; accepted: ICAO indicators of four letters, comma-separated, or empty.";
        if (AerodromeUrl.Length > 0 && !(Uri.TryCreate(AerodromeUrl, UriKind.Absolute, out var uri) && uri.Scheme is "https" or "http"))
            yield return $"Observations:AerodromeUrl is '{AerodromeUrl}'; accepted: an absolute http or https address, or empty.";
    }

    /// <summary>The same for the reports themselves.</summary>
    public AerodromeOptions ToAerodromes(string contact) =>
        AerodromeUrl.Length == 0
            ? new AerodromeOptions { Contact = contact }
            : new AerodromeOptions { Contact = contact, BaseUrl = new Uri(AerodromeUrl.TrimEnd('/') + "/") };
}

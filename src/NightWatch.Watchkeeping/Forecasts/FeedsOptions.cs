using NightWatch.Weather;
using NightWatch.Weather.Fake;
using NightWatch.Weather.Feeds;

namespace NightWatch.Watchkeeping.Forecasts;

/// <summary>Section "Feeds".</summary>
public sealed class FeedsOptions
{
    public const string Section = "Feeds";

    /// <summary>Invented weather, for trying things out.</summary>
    public const string FakeId = "fake";

    private const string AutoEnsemble = "auto";

    /// <summary>Feeds in the order of trust, comma-separated: the first that answers decides, the next is the second opinion.</summary>
    public string Order { get; set; } = "open-meteo,met-norway";

    /// <summary>
    /// Ensemble for the probability: "open-meteo-ensemble", "fake", "none", or "auto": Open-Meteo's where Open-Meteo is in the order.
    /// </summary>
    public string Ensemble { get; set; } = AutoEnsemble;

    /// <summary>Mail address or web page of whoever runs this installation; MET Norway and the US weather service demand it.</summary>
    public string Contact { get; set; } = "";

    /// <summary>"private" or "commercial"; must be said, since Open-Meteo's free service is for private use only.</summary>
    public string Usage { get; set; } = "";

    /// <summary>A stored answer older than so many hours is not used any more; the weather is then unknown.</summary>
    public int MostAgeHours { get; set; } = 24;

    /// <summary>Address of a mirror of MET Norway; empty: MET Norway's own.</summary>
    public string MetNorwayUrl { get; set; } = "";

    /// <summary>Address of a mirror of the US National Weather Service; empty: its own.</summary>
    public string NwsUrl { get; set; } = "";

    /// <summary>Address of an Open-Meteo instance of your own; empty: Open-Meteo's.</summary>
    public string OpenMeteoUrl { get; set; } = "";

    /// <summary>The same for its ensemble.</summary>
    public string OpenMeteoEnsembleUrl { get; set; } = "";

    /// <summary>File that holds the key of a paid Open-Meteo plan and nothing else; empty: none.</summary>
    public string OpenMeteoKeyFile { get; set; } = "";

    /// <summary>Seed of the invented weather.</summary>
    public long FakeSeed { get; set; } = 1;

    /// <summary>Kind of climate of the invented weather: dry-desert, semi-arid-high-plain, humid-continental or marine-coast.</summary>
    public string FakeClimate { get; set; } = ClimateKinds.Default.Word();

    /// <summary>What is wrong, one sentence a fault, each naming its key; empty: nothing.</summary>
    public IReadOnlyList<string> Faults()
    {
        var own = OwnFaults().ToList();
        var keys = Usage.Equals(nameof(Weather.Feeds.Usage.Commercial), StringComparison.OrdinalIgnoreCase)
            ? " (Feeds:Order, Feeds:OpenMeteoKeyFile and Feeds:OpenMeteoUrl are the settings for it.)"
            : "";
        return own.Count > 0 ? own : [.. WeatherFeeds.Faults(ToWeather()).Select(fault => "Feeds: " + fault + keys)];
    }

    /// <summary>The same for the feeds themselves.</summary>
    public WeatherOptions ToWeather() => new()
    {
        Feeds = Ids,
        Ensemble = Ensemble switch
        {
            "" or "none" => null,
            AutoEnsemble => Ids.Contains("open-meteo") ? "open-meteo-ensemble" : null,
            _ => Ensemble,
        },
        Usage = Usage.Length == 0 ? null : Enum.Parse<Usage>(Usage, ignoreCase: true),
        Contact = Given(Contact),
        MetNorwayUrl = Address(MetNorwayUrl),
        NwsUrl = Address(NwsUrl),
        OpenMeteoUrl = Address(OpenMeteoUrl),
        OpenMeteoEnsembleUrl = Address(OpenMeteoEnsembleUrl),
        OpenMeteoApiKey = OpenMeteoKeyFile.Length == 0 ? null : File.ReadAllText(OpenMeteoKeyFile).Trim(),
        FakeSeed = FakeSeed,
        FakeClimate = ClimateKinds.Of(FakeClimate) ?? ClimateKinds.Default,
    };

    private string[] Ids => Order.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);

    private IEnumerable<string> OwnFaults()
    {
        if (Usage.Length == 0)
            yield return "Feeds:Usage is not set; accepted: private (no advertising, no subscriptions) or commercial. Some feeds are " +
                "free for private use only.";
        if (Contact.Length == 0 && Ids.FirstOrDefault(id => id is "met-norway" or "nws") is { } strict)
            yield return $"Feeds:Contact is not set; accepted: a mail address or web page of whoever runs this installation. {strict} " +
                "answers nobody without.";
        if (MostAgeHours is < 1 or > 72) yield return $"Feeds:MostAgeHours is {MostAgeHours}; accepted: 1 to 72.";
        if (Usage.Length > 0 && !(Enum.TryParse<Usage>(Usage, ignoreCase: true, out var usage) && Enum.IsDefined(usage)))
            yield return $"Feeds:Usage is '{Usage}'; accepted: private or commercial.";
        if (ClimateKinds.Of(FakeClimate) is null)
            yield return $"Feeds:FakeClimate is '{FakeClimate}'; accepted: {string.Join(", ", ClimateKinds.Words)}.";
        if (OpenMeteoKeyFile.Length > 0 && !File.Exists(OpenMeteoKeyFile))
            yield return $"Feeds:OpenMeteoKeyFile is '{OpenMeteoKeyFile}'; accepted: a file that exists, or empty.";
        foreach (
            var (key, address) in (IEnumerable<(string, string)>)
                [
                    (nameof(MetNorwayUrl), MetNorwayUrl),
                    (nameof(NwsUrl), NwsUrl),
                    (nameof(OpenMeteoUrl), OpenMeteoUrl),
                    (nameof(OpenMeteoEnsembleUrl), OpenMeteoEnsembleUrl),
                ])
        {
            if (address.Length > 0 && !(Uri.TryCreate(address, UriKind.Absolute, out var uri) && uri.Scheme is "https" or "http"))
                yield return $"Feeds:{key} is '{address}'; accepted: an absolute http or https address, or empty.";
        }
    }

    private static string? Given(string text) => text.Length == 0 ? null : text;

    private static Uri? Address(string text) => text.Length == 0 ? null : new Uri(text);
}

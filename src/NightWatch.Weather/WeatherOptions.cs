using NightWatch.Weather.Fake;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.MetNorway;
using NightWatch.Weather.Http;
using NightWatch.Weather.Nws;
using NightWatch.Weather.OpenMeteo;

namespace NightWatch.Weather;

/// <summary>Which feeds an installation uses and as whom. What the feeds share is said once, here.</summary>
public sealed record WeatherOptions
{
    /// <summary>Feeds in the order of preference: the first that has a forecast is used, the next where it has none.</summary>
    public IReadOnlyList<string> Feeds { get; init; } = ["open-meteo", "met-norway"];

    /// <summary>Ensemble for the probability: "open-meteo-ensemble", "fake", or null for none.</summary>
    public string? Ensemble { get; init; }

    /// <summary>What the installation is for; must be set where a feed's free host forbids commercial use.</summary>
    public Usage? Usage { get; init; }

    /// <summary>Mail address or web page of whoever runs the installation.</summary>
    public string? Contact { get; init; }

    /// <summary>Product and version in the User-Agent.</summary>
    public string Product { get; init; } = Http.Product.Token;

    /// <summary>Attempts after the first that fails; 0 where a person waits for the answer.</summary>
    public int Retries { get; init; } = FeedPipeline.Retries;

    /// <summary>Address of MET Norway; null: its own.</summary>
    public Uri? MetNorwayUrl { get; init; }

    /// <summary>Address of the US National Weather Service; null: its own.</summary>
    public Uri? NwsUrl { get; init; }

    /// <summary>Address of the Open-Meteo forecast; null: its own.</summary>
    public Uri? OpenMeteoUrl { get; init; }

    /// <summary>Address of the Open-Meteo ensemble; null: its own.</summary>
    public Uri? OpenMeteoEnsembleUrl { get; init; }

    /// <summary>Key of a paid Open-Meteo plan.</summary>
    public string? OpenMeteoApiKey { get; init; }

    /// <summary>Seed of the fake feed's world.</summary>
    public long FakeSeed { get; init; } = 1;

    /// <summary>Climate of the fake feed's world.</summary>
    public ClimateKind FakeClimate { get; init; } = ClimateKinds.Default;

    /// <summary>The ids under which their answers and holds are kept: of the forecasts in order, then of the members.</summary>
    public IEnumerable<string> KeptIds() => Ensemble is null ? Feeds : Feeds.Append(MembersId.Of(Ensemble));

    /// <summary>How much a feed may be asked in a day; null: it sets no limit a day, or a plan or host of one's own sets another.</summary>
    /// <param name="keptId">One of <see cref="KeptIds"/>.</param>
    public FeedBudget? BudgetOf(string keptId) =>
        OpenMeteoApiKey is not null
            ? null
            : keptId switch
            {
                "open-meteo" when OpenMeteoUrl is null => new FeedBudget(OpenMeteoBudget.CallsADay, OpenMeteoBudget.OfForecast(OpenMeteo)),
                _ when keptId == MembersId.Of("open-meteo-ensemble") && OpenMeteoEnsembleUrl is null => new FeedBudget(
                    OpenMeteoBudget.CallsADay, OpenMeteoBudget.OfEnsemble(OpenMeteo)),
                _ => null,
            };

    internal MetNorwayOptions MetNorway
    {
        get
        {
            var defaults = new MetNorwayOptions { Contact = Contact, Product = Product };
            return MetNorwayUrl is { } url ? defaults with { BaseUrl = url } : defaults;
        }
    }

    internal NwsOptions Nws
    {
        get
        {
            var defaults = new NwsOptions { Contact = Contact, Product = Product };
            return NwsUrl is { } url ? defaults with { BaseUrl = url } : defaults;
        }
    }

    internal OpenMeteoOptions OpenMeteo => new()
    {
        Usage = Usage,
        ApiKey = OpenMeteoApiKey,
        BaseUrl = OpenMeteoUrl,
        EnsembleBaseUrl = OpenMeteoEnsembleUrl,
        Product = Product,
        Contact = Contact,
    };
}

using System.Collections.Immutable;
using System.Text;
using NightWatch.Letters.Policy;
using NightWatch.Planning.Chance;
using NightWatch.Planning.Conditions;
using NightWatch.Planning.Reasons;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Verification;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Places;
using NightWatch.Store.Connections;
using NightWatch.Store.Due;
using NightWatch.Store.Outbox;
using NightWatch.Store.Verdicts;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Store.Tests.Databases;

/// <summary>The invented photographer of these tests.</summary>
internal static class Given
{
    public static readonly Instant Now = Instant.FromUtc(2027, 3, 4, 18, 0);

    public static readonly LocalDate Night = new(2027, 3, 6);

    public static readonly Duration Lease = Duration.FromMinutes(2);

    public static Site Site(string id = "windmill-bend", string name = "Windmill Bend") => new()
    {
        Id = id,
        Name = name,
        Position = new GeoPosition(-33.35, 20.02, 640),
        Zone = DateTimeZoneProviders.Tzdb["Africa/Johannesburg"],
        Horizon = new HorizonProfile([new(90, 4), new(180, 1.5)]),
        Ground = GroundKind.Gravel,
    };

    public static Watch Watch(string id = "core-at-the-bend", Site? site = null, string address = "Ilse.Vermaak@example.org") => new()
    {
        Id = id,
        Subscriber = new("Ilse Vermaak", address),
        Site = site ?? Site(),
        Move = new Move { Start = new(120, 20), End = new(150, 35), EaseIn = 0.1, RailM = 1.2 },
    };

    /// <summary>An answer of one value that says how many there were before.</summary>
    public static ImmutableArray<ForecastSeries> Answer(int number = 1, Instant? issuedAt = null) =>
        [
            new ForecastSeriesBuilder()
                .Add(InstantQuantity.WindMps, Now, number)
                .Build(
                    "fake",
                    "test",
                    issuedAt,
                    Now,
                    new Attribution("Invented", new Uri("https://example.org/"), "none"),
                    new ForecastCell(-33.35, 20.02, null)),
        ];

    public static DueItem Due(
        string watch = "core-at-the-bend",
        PassKind pass = PassKind.Evening,
        string slot = "",
        Instant? at = null,
        Instant? notAfter = null) => new(new(watch, pass, Night, slot), at ?? Now, notAfter ?? (at ?? Now) + Duration.FromHours(12));

    public static OutboxDraft Letter(
        string key,
        Instant? notBefore = null,
        Instant? notAfter = null,
        string recipient = "ilse@example.org",
        params WatchNight[] about) =>
        new()
        {
            DedupeKey = key,
            MessageId = $"{key}@nightwatch.example.org",
            Kind = nameof(LetterKind.Outlook),
            Recipient = recipient,
            Mime = Encoding.ASCII.GetBytes($"Subject: {key}\r\n\r\nClear skies.\r\n"),
            NotBefore = notBefore ?? Now,
            NotAfter = notAfter ?? Now + Duration.FromDays(1),
            About = about,
        };

    public static VerdictRecord Verdict(LocalDate? night = null, Instant? at = null, VerdictClass @class = VerdictClass.Go) => new()
    {
        WatchId = "core-at-the-bend",
        Night = night ?? Night,
        Pass = PassKind.Evening,
        At = at ?? Now,
        Verdict = new()
        {
            Class = @class,
            Run = new Interval(Now + Duration.FromHours(5), Now + Duration.FromHours(8)),
            Probability = new(0.72, ProbabilityBasis.LaggedRuns, 4)
            {
                Uncalibrated = 0.81,
                CalibrationVersion = 3,
                Figures = new ChanceFigures(new ForecastShape(0.5, 0.25, 1.6), new ForecastShape(2.7081, 0.3, 1.4), 1.2, -0.5, 0.4),
            },
            Reasons =
            [
                new CloudMean(Severity.Ok, new Interval(Now, Now + Duration.FromHours(2)), 0.08, 0.12, Now, new(0.2, 0.45), 0),
                new FogNotKnown(Severity.Caution, null, 0.1) { Mend = new Mend.Knowledge(Mend.Missing.Fog) },
            ],
        },
        ForecastIds = [11, 12],
        Runs = new(11, null, [12], null, Now - Duration.FromMinutes(4), new(1.25, 72, 72)),
        FeedId = "met-norway",
        LeadNights = 2,
        InputsHash = "5f2c",
        Letter = LetterKind.Outlook,
        Why = "first go at lead 2",
    };

    public static async Task<Watch> SavedWatchAsync(
        Database database, string id = "core-at-the-bend", string address = "Ilse.Vermaak@example.org")
    {
        var watch = Watch(id, address: address);
        await new Store.Watches.WatchStore(database).PutAsync(watch, Now, TestContext.Current.CancellationToken);
        return watch;
    }
}

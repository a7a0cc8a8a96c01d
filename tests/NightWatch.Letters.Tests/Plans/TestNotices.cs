using NightWatch.Letters.Notices;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Season;
using NodaTime;

namespace NightWatch.Letters.Tests.Plans;

/// <summary>Notices to Inés Robledo.</summary>
internal static class TestNotices
{
    private static readonly Instant Morning = Ines.At(7, 0, -1);

    public static ConfirmationDraft Confirmation { get; } =
        new(
            "ines@robledo.example",
            new Uri("https://nightwatch.example/confirm?t=Jm3vR2c8kQ0pXw5yTz7uAg"),
            Morning,
            Morning + Duration.FromHours(24))
        {
            Place = Ines.CoreWatch.Site.Position,
            Zone = Ines.Madrid,
        };

    public static SignInDraft SignIn { get; } =
        new(
            "ines@robledo.example",
            new Uri("https://nightwatch.example/sign-in?t=pXw5yTz7uAgJm3vR2c8kQ0"),
            Morning,
            Morning + Duration.FromMinutes(20))
        {
            Zone = Ines.Madrid,
        };

    public static DigestDraft Digest { get; } = DigestOf(Morning);

    /// <summary>A fortnight later the full Moon lights every night of the week that cloud does not take.</summary>
    public static DigestDraft EmptyDigest { get; } = DigestOf(Morning + Duration.FromDays(14));

    public static IReadOnlyList<(string Name, Func<LetterWriter, Task<Notice>> Write)> All { get; } =
    [
        ("confirmation", writer => writer.WriteConfirmationAsync(Confirmation, TestContext.Current.CancellationToken)),
        ("sign-in", writer => writer.WriteSignInAsync(SignIn, TestContext.Current.CancellationToken)),
        ("digest", writer => writer.WriteDigestAsync(Digest, TestContext.Current.CancellationToken)),
        ("digest-empty", writer => writer.WriteDigestAsync(EmptyDigest, TestContext.Current.CancellationToken)),
        ("test", writer => writer.WriteTestAsync("ines@robledo.example", Morning, TestContext.Current.CancellationToken)),
    ];

    private static DigestDraft DigestOf(Instant now)
    {
        Watch[] watches = [Ines.CoreWatch, Ines.SaltShelf];
        var today = now.InZone(Ines.Madrid).Date;
        var weather = new InventedWeather(TestDrafts.Fair);
        return new DigestDraft
        {
            Watches = watches,
            Plans =
            [
                .. watches.SelectMany(watch =>
                    Enumerable.Range(0, DigestDraft.Nights).Select(ahead => weather.Plan(watch, today.PlusDays(ahead), now))),
            ],
            Seasons = watches.ToDictionary(
                watch => watch.Id,
                watch => DarkCalendar.Of(watch.Site.Position, watch.Site.Zone, today, DigestDraft.SeasonNights, watch.Subject)),
            Now = now,
        };
    }
}

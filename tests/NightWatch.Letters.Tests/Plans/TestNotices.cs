using NightWatch.Letters.Notices;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Season;
using NodaTime;

namespace NightWatch.Letters.Tests.Plans;

/// <summary>Notices to Inés Robledo.</summary>
internal static class TestNotices
{
    private static readonly Instant Morning = TestPlans.At(7, 0, -1);

    public static ConfirmationDraft Confirmation { get; } =
        new("ines@robledo.example", new Uri("https://nightwatch.example/confirm?t=Jm3vR2c8kQ0pXw5yTz7uAg"), Morning, Morning + Duration.FromHours(24))
        {
            Place = TestPlans.CoreWatch.Site.Position,
            Zone = TestSky.Madrid,
        };

    public static SignInDraft SignIn { get; } =
        new("ines@robledo.example", new Uri("https://nightwatch.example/sign-in?t=pXw5yTz7uAgJm3vR2c8kQ0"), Morning, Morning + Duration.FromMinutes(20)) { Zone = TestSky.Madrid };

    public static DigestDraft Digest { get; } = DigestOf(VerdictClass.NoGo, VerdictClass.Go, VerdictClass.Marginal, VerdictClass.NoGo, VerdictClass.NoGo, VerdictClass.Marginal, VerdictClass.NoGo);

    public static DigestDraft EmptyDigest { get; } = DigestOf([.. Enumerable.Repeat(VerdictClass.NoGo, 7)]);

    public static IReadOnlyList<(string Name, Func<LetterWriter, Task<Notice>> Write)> All { get; } =
    [
        ("confirmation", writer => writer.WriteConfirmationAsync(Confirmation, TestContext.Current.CancellationToken)),
        ("sign-in", writer => writer.WriteSignInAsync(SignIn, TestContext.Current.CancellationToken)),
        ("digest", writer => writer.WriteDigestAsync(Digest, TestContext.Current.CancellationToken)),
        ("digest-empty", writer => writer.WriteDigestAsync(EmptyDigest, TestContext.Current.CancellationToken)),
        ("test", writer => writer.WriteTestAsync("ines@robledo.example", Morning, TestContext.Current.CancellationToken)),
    ];

    public static DigestDraft DigestOf(params VerdictClass[] classes)
    {
        Watch[] watches = [TestPlans.CoreWatch, TestDrafts.SaltShelf];
        var today = TestPlans.Night.PlusDays(-1);
        return new DigestDraft
        {
            Watches = watches,
            Plans = [.. watches.SelectMany(watch => classes.Select((verdict, i) => TestPlans.Of(verdict, night: today.PlusDays(i), watch: watch)))],
            Seasons = watches.ToDictionary(watch => watch.Id, watch => DarkCalendar.Of(watch.Site.Position, watch.Site.Zone, today, DigestDraft.SeasonNights, watch.Subject)),
            Now = Morning,
        };
    }
}

using System.Net;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using NightWatch.Delivery.Links;
using NightWatch.Delivery.Mail;
using NightWatch.Delivery.Outbox;
using NightWatch.Delivery.Tests.Mail;
using NightWatch.Pages.Subscribers;
using NightWatch.Store.Subscribers;
using NodaTime;

namespace NightWatch.Pages.Tests.Subscribers;

/// <summary>That a flood from many networks does not stay unseen.</summary>
public sealed class MailRationsTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task What_all_networks_together_may_cause_is_said_once_an_hour_and_shown_to_the_operator_when_used_up()
    {
        await using var world = await PagesWorld.StartAsync(settings => settings.Service.PagesBase = "");
        var log = new Warnings();
        var rations = new MailRations(
            world.Parts.GetRequiredService<RationStore>(), world.Parts.GetRequiredService<StoredLinkSigner>(), log);
        var now = world.Clock.GetCurrentInstant();
        using var visitor = new Visitor(world);

        for (var i = 0; i < MailRations.MostAnHour; i++)
        {
            if (i == 7) Assert.Contains("7 of at most 300", (await visitor.GetAsync("operator")).Body, StringComparison.Ordinal);
            Assert.True(await TakeAsync(i, now));
        }

        Assert.Empty(log.Said);
        for (var i = 0; i < 5; i++) Assert.False(await TakeAsync(1000 + i, now));
        Assert.Contains("300", Assert.Single(log.Said), StringComparison.Ordinal);
        Assert.Contains("300: as many as may be, so more are refused", (await visitor.GetAsync("operator")).Body, StringComparison.Ordinal);
        Assert.DoesNotContain("as many as may be", (await visitor.GetAsync("status")).Body, StringComparison.Ordinal);
        Assert.True(await TakeAsync(2000, now + Duration.FromHours(2)));

        // A network that asks too often is its own affair.
        var later = now + Duration.FromHours(2);
        for (var i = 0; i < 12; i++) await TakeAsync(3000, later);
        Assert.Single(log.Said);

        Task<bool> TakeAsync(int network, Instant at) =>
            rations.TakeFromNetworkAsync(IPAddress.Parse($"203.{network / 250}.{network % 250}.1"), at, Stop);
    }

    /// <summary>Both are counted in one table.</summary>
    [Fact]
    public async Task Letters_handed_to_the_mail_server_use_up_nothing_of_what_strangers_may_cause()
    {
        await using var world = await PagesWorld.StartAsync();
        var now = world.Clock.GetCurrentInstant();
        var rate = new SendRate(
            world.Parts.GetRequiredService<RationStore>(),
            new MailOptions
            {
                Transport = "smtp",
                MostPerMinute = 1000,
                MostPerMinutePerDomain = 1000,
            });

        for (var i = 0; i < 5; i++) Assert.Equal(SendAllowance.Free, await rate.TakeAsync(GivenLetter.InHand(), now, Stop));

        Assert.Equal(0, await world.Parts.GetRequiredService<MailRations>().LastHourAsync(now, Stop));
    }

    private sealed class Warnings : ILogger<MailRations>
    {
        public List<string> Said { get; } = [];

        public IDisposable? BeginScope<TState>(TState state)
            where TState : notnull => null;

        public bool IsEnabled(LogLevel logLevel) => true;

        public void Log<TState>(
            LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter)
        {
            if (logLevel == LogLevel.Warning) Said.Add(formatter(state, exception));
        }
    }
}

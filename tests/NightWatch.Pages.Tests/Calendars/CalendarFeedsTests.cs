using System.Net;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using NightWatch.Delivery.Links;
using NightWatch.Letters.Policy;
using NightWatch.Pages.Calendars;
using NightWatch.Planning.Verdicts;
using NightWatch.Service.Hosting;
using NightWatch.Service.Rehearsal;
using NightWatch.Service.Settings;
using NightWatch.Store.Connections;
using NightWatch.Store.Passes;
using NightWatch.Store.Watches;
using NodaTime;

namespace NightWatch.Pages.Tests.Calendars;

/// <summary>The feeds over HTTP on loopback.</summary>
public sealed class CalendarFeedsTests : IAsyncLifetime
{
    private static readonly LocalDate Today = Cast.FirstDay.PlusDays(10);
    private static readonly Instant Noon = Today.At(new LocalTime(12, 0)).InZoneStrictly(Cast.Watches[0].Site.Zone).ToInstant();

    private readonly string folder = Directory.CreateTempSubdirectory("nightwatch-feeds-").FullName;
    private readonly HttpClient client = new();
    private WebApplication app = null!;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private CalendarFeeds Feeds => app.Services.GetRequiredService<CalendarFeeds>();

    public async ValueTask InitializeAsync()
    {
        var settings = AllSettings.ForRehearsal(Path.Combine(folder, "feeds.db"), Path.Combine(folder, "letters"), seed: 1);
        settings.Service.PagesBase = "https://night.example.org/";
        var builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        builder.WebHost.UseUrls("http://127.0.0.1:0");
        builder
            .Services.AddSingleton<IClock>(new VirtualClock(Noon))
            .AddSingleton<TimeProvider>(new VirtualClock(Noon))
            .AddNightWatch(settings);
        app = builder.Build();
        app.MapCalendarFeeds();
        await app.Services.GetRequiredService<Database>().MigrateAsync(Cancel);
        await app.Services.GetRequiredService<StoredLinkSigner>().LoadAsync(Cancel);
        foreach (var watch in Cast.Watches) await app.Services.GetRequiredService<WatchStore>().PutAsync(watch, Noon, Cancel);
        await app.StartAsync(Cancel);
        client.BaseAddress = new Uri(app.Urls.Single());
    }

    public async ValueTask DisposeAsync()
    {
        client.Dispose();
        await app.DisposeAsync();
        Directory.Delete(folder, recursive: true);
    }

    [Fact]
    public async Task The_feed_has_the_nights_that_are_on_and_the_dark_season_and_no_other_night()
    {
        await TellAsync(1, VerdictClass.Go);
        await TellAsync(2, VerdictClass.NoGo);
        var answer = await client.GetAsync(await PathAsync(), Cancel);

        Assert.Equal("text/calendar; charset=utf-8", answer.Content.Headers.ContentType!.ToString());
        var calendar = Ical.Net.Calendar.Load(await answer.Content.ReadAsStringAsync(Cancel))!;
        var night = Assert.Single(calendar.Events, entry => entry.Summary!.StartsWith("GO:", StringComparison.Ordinal));
        Assert.Equal((Noon + Duration.FromHours(30)).ToDateTimeUtc(), night.Start!.AsUtc);
        Assert.Contains(calendar.Events, entry => entry.Summary!.StartsWith("Best dark run", StringComparison.Ordinal));
        Assert.DoesNotContain(calendar.Events, entry => entry.Summary!.StartsWith("NO-GO", StringComparison.Ordinal));
        Assert.Equal(calendar.Events.Count, calendar.Events.Select(entry => entry.Uid).Distinct().Count());
    }

    [Fact]
    public async Task An_unchanged_calendar_is_not_sent_again_and_a_changed_one_is()
    {
        var path = await PathAsync();
        var tag = (await client.GetAsync(path, Cancel)).Headers.ETag!;
        async Task<HttpStatusCode> AskAsync()
        {
            using var request = new HttpRequestMessage(HttpMethod.Get, path);
            request.Headers.IfNoneMatch.Add(tag);
            return (await client.SendAsync(request, Cancel)).StatusCode;
        }

        Assert.Equal(HttpStatusCode.NotModified, await AskAsync());
        await TellAsync(1, VerdictClass.Go);
        Assert.Equal(HttpStatusCode.OK, await AskAsync());
    }

    [Fact]
    public async Task A_revoked_or_unknown_address_opens_nothing()
    {
        var path = await PathAsync();
        Assert.Equal(HttpStatusCode.NotFound, (await client.GetAsync("calendar/aaaaaaaaaaaaaaaaaaaaaa.ics", Cancel)).StatusCode);
        var next = (await Feeds.RevokeAsync(Cast.Watches[0].Subscriber.Address, Cancel))!.AbsolutePath;
        Assert.NotEqual(path, next);
        Assert.Equal(HttpStatusCode.NotFound, (await client.GetAsync(path, Cancel)).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await client.GetAsync(next, Cancel)).StatusCode);
        Assert.Equal(next, await PathAsync());
    }

    private async Task<string> PathAsync() => (await Feeds.LinkAsync(Cast.Watches[0].Subscriber.Address, Cancel))!.AbsolutePath;

    private async Task TellAsync(int ahead, VerdictClass told)
    {
        var memory = await app.Services.GetRequiredService<ToldNightStore>().GetAsync(Cast.Watches[0].Id, Today.PlusDays(ahead), Cancel);
        var leaveBy = Noon + Duration.FromHours(24 * ahead + 6);
        var next = memory.Night with
        {
            Told = told,
            ToldBy = LetterKind.Outlook,
            ToldAt = Noon,
            LeaveBy = leaveBy,
            ToldRun = new Interval(leaveBy + Duration.FromHours(3), leaveBy + Duration.FromHours(8)),
        };
        await app
            .Services.GetRequiredService<PassStore>()
            .CommitAsync(new PassCommit { Told = [memory with { Night = next }] }, Noon, Cancel);
    }
}

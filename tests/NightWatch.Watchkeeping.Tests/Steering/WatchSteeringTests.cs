using Microsoft.Extensions.DependencyInjection;
using MimeKit;
using NightWatch.Letters.Policy;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Verification;
using NightWatch.Planning.Verification.Outcomes;
using NightWatch.Planning.Watches;
using NightWatch.Service.Rehearsal;
using NightWatch.Store.Due;
using NightWatch.Store.Outbox;
using NightWatch.Store.Outcomes;
using NightWatch.Store.Passes;
using NightWatch.Store.Watches;
using NightWatch.Watchkeeping.Evaluations;
using NightWatch.Watchkeeping.Passes;
using NightWatch.Watchkeeping.Steering;
using NightWatch.Watchkeeping.Tests.Passes;
using NodaTime;

namespace NightWatch.Watchkeeping.Tests.Steering;

/// <summary>The service's own parts on a SQLite file of its own; the memory that a wish meets is put there by hand.</summary>
public sealed class WatchSteeringTests : IAsyncLifetime
{
    private static readonly Watch Flat = Cast.Watches[0];
    private static readonly Watch Gums = Cast.Watches[1];
    private static readonly LocalDate Today = Cast.FirstDay.PlusDays(10);
    private static readonly Instant Noon = Today.At(new LocalTime(12, 0)).InZoneStrictly(Flat.Site.Zone).ToInstant();

    private readonly string folder = Directory.CreateTempSubdirectory("nightwatch-steering-").FullName;
    private readonly VirtualClock clock = new(Noon);
    private ServiceProvider parts = null!;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private WatchSteering Wishes => parts.GetRequiredService<WatchSteering>();

    private OutboxStore Outbox => parts.GetRequiredService<OutboxStore>();

    public async ValueTask InitializeAsync()
    {
        parts = await RehearsalParts.StartAsync(folder, clock);
    }

    public async ValueTask DisposeAsync()
    {
        await parts.DisposeAsync();
        Directory.Delete(folder, recursive: true);
    }

    [Fact]
    public async Task A_snoozed_night_is_snoozed_for_the_policy_and_unsnoozed_again()
    {
        Assert.IsType<SteeringOutcome.Done>(await Wishes.SnoozeNightAsync(Flat.Id, Today.PlusDays(1), Cancel));
        Assert.True((await ToldAsync(Flat, 1)).Snoozed);
        Assert.IsType<SteeringOutcome.Done>(await Wishes.SnoozeNightAsync(Flat.Id, Today.PlusDays(1), Cancel));
        Assert.IsType<SteeringOutcome.Done>(await Wishes.UnsnoozeNightAsync(Flat.Id, Today.PlusDays(1), Cancel));
        Assert.False((await ToldAsync(Flat, 1)).Snoozed);
    }

    [Theory]
    [InlineData(false, OutboxState.Suppressed)]
    [InlineData(true, OutboxState.Pending)]
    public async Task Snoozing_stops_an_outlook_on_its_way_but_nothing_that_the_calendar_needs(bool onCalendar, OutboxState state)
    {
        await TellAsync(Flat, 1, VerdictClass.Marginal, onCalendar, queued: true);
        await Wishes.SnoozeNightAsync(Flat.Id, Today.PlusDays(1), Cancel);
        Assert.Equal(state, Assert.Single(await Outbox.ListAsync(null, 10, Cancel)).State);
    }

    [Fact]
    public async Task A_night_that_is_over_or_of_no_watch_is_refused_and_nothing_is_kept()
    {
        Assert.IsType<SteeringOutcome.Refused>(await Wishes.SnoozeNightAsync(Flat.Id, Today.PlusDays(-2), Cancel));
        Assert.Equal(new SteeringOutcome.NoSuchWatch("nobody"), await Wishes.SnoozeNightAsync("nobody", Today, Cancel));
        Assert.Equal(new SteeringOutcome.NoSuchWatch("nobody"), await Wishes.UnsubscribeAsync("nobody", Cancel));
        Assert.IsType<SteeringOutcome.Refused>(await Wishes.PauseUntilAsync(Flat.Id, Today, Cancel));
    }

    [Fact]
    public async Task A_watch_rests_until_the_date_and_nights_in_the_calendar_are_stood_down()
    {
        await TellAsync(Flat, 1, VerdictClass.Go, onCalendar: true);
        await TellAsync(Flat, 6, VerdictClass.Go, onCalendar: true);

        Assert.IsType<SteeringOutcome.Done>(await Wishes.PauseUntilAsync(Flat.Id, Today.PlusDays(5), Cancel));

        Assert.True(await ToldAsync(Flat, 1) is { IsOff: true, OnCalendar: false, Closed: false });
        Assert.True(await ToldAsync(Flat, 6) is { IsOn: true, OnCalendar: true });
        var letter = Assert.Single(await LettersAsync());
        Assert.Contains("METHOD:CANCEL", CalendarOf(letter), StringComparison.Ordinal);
        Assert.StartsWith("STAND DOWN", letter.Subject, StringComparison.Ordinal);
        Assert.DoesNotContain("off", letter.TextBody!.Split("Before any night out")[0], StringComparison.Ordinal);

        var watch = await parts.GetRequiredService<WatchStore>().FindAsync(Flat.Id, Cancel);
        Assert.Equal((false, Today.PlusDays(5)), (watch!.Paused, watch.PausedUntil));
    }

    [Fact]
    public async Task A_watch_at_rest_has_nothing_due_and_has_again_when_its_date_comes()
    {
        await Wishes.PauseUntilAsync(Flat.Id, Today.PlusDays(2), Cancel);
        var due = parts.GetRequiredService<DueStore>();
        async Task<int> ClaimedAsync(int days)
        {
            var at = Noon + Duration.FromDays(days);
            await due.ScheduleAsync(
                [new DueItem(new DueKey(Flat.Id, PassKind.Morning, Today.PlusDays(days)), at, at + Duration.FromHours(1))], Cancel);
            return (await due.ClaimAsync(at, 10, Duration.FromMinutes(1), Cancel)).Count;
        }

        Assert.Equal((0, 0, 1), (await ClaimedAsync(0), await ClaimedAsync(1), await ClaimedAsync(2)));
        var resting = (await parts.GetRequiredService<WatchStore>().FindAsync(Flat.Id, Cancel))!;
        Assert.All(DueCalendar.Daily(resting, Noon, Duration.FromDays(4)), item => Assert.True(item.Key.Night >= Today.PlusDays(2)));
        await parts.GetRequiredService<WatchStore>().PauseAsync(Flat.Id, false, Noon, Cancel);
        Assert.Null((await parts.GetRequiredService<WatchStore>().FindAsync(Flat.Id, Cancel))!.PausedUntil);
    }

    [Fact]
    public async Task Switching_takes_one_night_out_of_the_calendar_and_puts_the_other_in()
    {
        var (from, to) = await GoNightsAsync();
        await TellAsync(from.Watch, from.Ahead, VerdictClass.Go, onCalendar: true);

        var outcome = await Wishes.SwitchNightAsync(
            new(from.Watch.Id, Today.PlusDays(from.Ahead)), new(to.Watch.Id, Today.PlusDays(to.Ahead)), Cancel);

        Assert.IsType<SteeringOutcome.Done>(outcome);
        Assert.True(await ToldAsync(from.Watch, from.Ahead) is { IsOff: true, OnCalendar: false, Closed: true });
        Assert.True(await ToldAsync(to.Watch, to.Ahead) is { IsOn: true, OnCalendar: true, Chosen: true });
        var letters = await LettersAsync();
        Assert.Equal(2, letters.Count);
        Assert.Contains(
            letters,
            letter =>
                CalendarOf(letter).Contains("METHOD:CANCEL", StringComparison.Ordinal)
                && letter.Subject!.StartsWith("STAND DOWN", StringComparison.Ordinal));
        Assert.Contains(
            letters,
            letter =>
                CalendarOf(letter).Contains("METHOD:REQUEST", StringComparison.Ordinal)
                && letter.Subject!.StartsWith("SWITCHED", StringComparison.Ordinal));

        // Asking twice writes nothing new.
        await Wishes.SwitchNightAsync(new(from.Watch.Id, Today.PlusDays(from.Ahead)), new(to.Watch.Id, Today.PlusDays(to.Ahead)), Cancel);
        Assert.Equal(2, (await LettersAsync()).Count);
    }

    [Fact]
    public async Task The_letter_about_the_chosen_night_says_how_often_such_calls_were_right()
    {
        var (from, to) = await GoNightsAsync();
        await TellAsync(from.Watch, from.Ahead, VerdictClass.Go, onCalendar: true);
        await RecordAsync(to.Watch, to.Ahead);

        await Wishes.SwitchNightAsync(new(from.Watch.Id, Today.PlusDays(from.Ahead)), new(to.Watch.Id, Today.PlusDays(to.Ahead)), Cancel);

        var chosen = Assert.Single(await LettersAsync(), letter => letter.Subject!.StartsWith("SWITCHED", StringComparison.Ordinal));
        Assert.Contains("12 of 12 times", chosen.TextBody!.ReplaceLineEndings(" "), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_night_of_another_subscriber_cannot_be_taken()
    {
        var stranger = Gums with { Id = "stranger", Subscriber = new Subscriber("Wenche Aas", "wenche@example.org") };
        await parts.GetRequiredService<WatchStore>().PutAsync(stranger, Noon, Cancel);
        Assert.IsType<SteeringOutcome.Refused>(
            await Wishes.SwitchNightAsync(new(Flat.Id, Today.PlusDays(1)), new("stranger", Today.PlusDays(1)), Cancel));
    }

    [Fact]
    public async Task Unsubscribing_keeps_the_watch_and_stops_what_is_on_its_way()
    {
        await TellAsync(Flat, 1, VerdictClass.Go, onCalendar: true, queued: true);
        Assert.IsType<SteeringOutcome.Done>(await Wishes.UnsubscribeAsync(Flat.Id, Cancel));
        Assert.True((await parts.GetRequiredService<WatchStore>().FindAsync(Flat.Id, Cancel))!.Paused);
        Assert.Equal(OutboxState.Suppressed, Assert.Single(await Outbox.ListAsync(null, 10, Cancel)).State);
    }

    private static string CalendarOf(MimeMessage letter) =>
        letter.BodyParts.OfType<TextPart>().Single(part => part.ContentType.IsMimeType("text", "calendar")).Text;

    /// <summary>Twelve nights of either class that came as called, as far ahead, on evenings on which the reader is free.</summary>
    private async Task RecordAsync(Watch watch, int ahead)
    {
        var nights = Enumerable
            .Range(1, 60)
            .Select(back => Today.PlusDays(-back))
            .Where(night => Alternatives.IsFree(watch, night))
            .Take(24);
        var calls = nights.Select((night, i) => (i < 12 ? VerdictClass.Go : VerdictClass.Marginal, night));
        foreach (var (said, night) in calls)
        {
            await parts
                .GetRequiredService<OutcomeStore>()
                .PutAsync(
                    watch.Id,
                    night,
                    said == VerdictClass.Go ? NightOutcome.Clear : NightOutcome.Partly,
                    OutcomeSource.Debrief,
                    Noon,
                    Cancel);
            await parts
                .GetRequiredService<PassStore>()
                .CommitAsync(
                    new PassCommit
                    {
                        Verdicts =
                        [
                            new()
                            {
                                WatchId = watch.Id,
                                Night = night,
                                Pass = PassKind.Evening,
                                At = night.PlusDays(-ahead).At(new LocalTime(9, 0)).InUtc().ToInstant(),
                                Verdict = new()
                                {
                                    Class = said,
                                    Run = null,
                                    Probability = new(0.8, ProbabilityBasis.EnsembleMembers, 20),
                                    Reasons = [],
                                },
                                InputsHash = "5f2c",
                                Why = "as a test",
                                LeadNights = ahead,
                                FeedId = "fake",
                            },
                        ],
                    },
                    Noon,
                    Cancel);
        }
    }

    // The invented weather of the seed decides which nights are on; two of them are needed.
    private async Task<((Watch Watch, int Ahead) From, (Watch Watch, int Ahead) To)> GoNightsAsync()
    {
        var forecasts = parts.GetRequiredService<Watchkeeping.Forecasts.ForecastSource>().BeginPass(Cancel);
        var on = new List<(Watch, int)>();
        foreach (var watch in Cast.Watches)
        {
            for (var ahead = 1; ahead <= 5; ahead++)
            {
                var plan = (
                    await NightEvaluation.AskAsync(
                        watch, Today.PlusDays(ahead), forecasts, Noon, parts.GetRequiredService<SharedSky>(), lastTold: null)).Plan;
                if (plan.Verdict.Class != VerdictClass.NoGo) on.Add((watch, ahead));
            }
        }

        Assert.True(on.Count >= 2, "This seed has no two nights to switch between; choose another.");
        return (on[0], on[^1]);
    }

    private async Task<ToldNight> ToldAsync(Watch watch, int ahead) =>
        (await parts.GetRequiredService<ToldNightStore>().GetAsync(watch.Id, Today.PlusDays(ahead), Cancel)).Night;

    private async Task TellAsync(Watch watch, int ahead, VerdictClass told, bool onCalendar, bool queued = false)
    {
        var night = Today.PlusDays(ahead);
        var memory = await parts.GetRequiredService<ToldNightStore>().GetAsync(watch.Id, night, Cancel);
        var leaveBy = night.At(new LocalTime(18, 0)).InZoneStrictly(watch.Site.Zone).ToInstant();
        var next = memory.Night with
        {
            Told = told,
            ToldBy = LetterKind.Outlook,
            ToldAt = Noon,
            Sent = [LetterKind.Outlook],
            Revision = 1,
            LeaveBy = leaveBy,
            CalendarSequence = onCalendar ? 0 : -1,
            OnCalendar = onCalendar,
        };
        OutboxDraft[] letters = queued
            ?
            [
                new()
                {
                    DedupeKey = $"outlook {ahead}",
                    MessageId = $"outlook.{ahead}@example.org",
                    Kind = "Outlook",
                    Recipient = watch.Subscriber.Address,
                    Mime = "Subject: x\r\n\r\n"u8.ToArray(),
                    NotBefore = Noon,
                    NotAfter = Noon + Duration.FromHours(9),
                    About = [new(watch.Id, night)],
                },
            ]
            : [];
        await parts
            .GetRequiredService<PassStore>()
            .CommitAsync(new PassCommit { Told = [memory with { Night = next }], Letters = letters }, Noon, Cancel);
    }

    private async Task<IReadOnlyList<MimeMessage>> LettersAsync()
    {
        var letters = new List<MimeMessage>();
        foreach (var entry in await Outbox.ListAsync(OutboxState.Pending, 20, Cancel))
            letters.Add(await MimeMessage.LoadAsync(new MemoryStream((await Outbox.MimeAsync(entry.Id, Cancel))!.Value.ToArray()), Cancel));
        return letters;
    }
}

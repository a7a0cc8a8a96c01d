using System.Diagnostics;
using Microsoft.Extensions.DependencyInjection;
using NightWatch.Letters.Policy;
using NightWatch.Service.Measuring;
using NightWatch.Service.Rehearsal;
using NightWatch.Service.Ticking;
using NightWatch.Store.Due;
using NightWatch.Watchkeeping.Evaluations;
using NightWatch.Watchkeeping.Forecasts;
using NightWatch.Watchkeeping.Measuring;
using NightWatch.Watchkeeping.Passes;
using NightWatch.Watchkeeping.Tests.Passes;
using NodaTime;

namespace NightWatch.Watchkeeping.Tests.Measuring;

/// <summary>Two days of the service's own ticks on invented weather, heard from outside.</summary>
public sealed class MeasuredPassTests : IAsyncLifetime
{
    private static readonly Instant Noon = Instant.FromUtc(2027, 5, 25, 2, 0);

    private readonly string folder = Directory.CreateTempSubdirectory("nightwatch-measured-").FullName;
    private readonly VirtualClock clock = new(Noon);
    private readonly List<Activity> spans = [];
    private ServiceProvider parts = null!;
    private Heard heard = null!;
    private Gauges gauges = null!;

    public async ValueTask InitializeAsync()
    {
        parts = await RehearsalParts.StartAsync(folder, clock, seed: 5);
        heard = new Heard(parts.GetRequiredService<Telemetry>());
        gauges = ActivatorUtilities.CreateInstance<Gauges>(parts);
    }

    public async ValueTask DisposeAsync()
    {
        heard.Dispose();
        await parts.DisposeAsync();
        Directory.Delete(folder, recursive: true);
    }

    [Fact]
    public async Task Every_stage_of_a_day_is_timed_and_every_count_adds_up()
    {
        await TwoDaysAsync();
        // What a pass has fetched it does not read again; a process that has just started does.
        var started = ActivatorUtilities.CreateInstance<ForecastSource>(parts);
        Assert.NotNull(
            (await started.Read(TestContext.Current.CancellationToken).AskAsync(NightEvaluation.PlaceOf(Cast.Watches[0]))).Newest);

        foreach (
            var stage in (string[])
                ["tick", "schedule", "claim", "subscriber", "forecast", "parse", "sky", "plan", "policy", "commit", "outbox", "retention"])
            Assert.True(heard.Times($"nightwatch.stage.duration{{nightwatch.stage={stage}}}") > 0, stage);
        // One sky and one plan a night judged, and those of alternatives on top.
        var judged = heard.Of("nightwatch.night.evaluated").Sum(one => one.Value);
        Assert.True(judged > 0);
        Assert.Equal(judged, heard.Times("nightwatch.stage.duration{nightwatch.stage=policy}"));
        Assert.True(heard.Times("nightwatch.stage.duration{nightwatch.stage=plan}") >= judged);
        Assert.Equal(
            heard.Times("nightwatch.stage.duration{nightwatch.stage=sky}"),
            heard.Times("nightwatch.stage.duration{nightwatch.stage=plan}"));
        Assert.True(heard.Times("nightwatch.feed.fetch.duration{nightwatch.feed=fake,nightwatch.outcome=fresh}") > 0);
        Assert.All(heard.All, measured => Assert.True(measured.Value >= 0, measured.Series));
    }

    [Fact]
    public async Task A_digest_is_a_letter_too_and_its_stages_are_timed()
    {
        var key = new DueKey(Cast.Watches[0].Id, PassKind.Digest, Noon.InZone(Cast.Watches[0].Site.Zone).Date);
        await parts
            .GetRequiredService<DueStore>()
            .ScheduleAsync([new DueItem(key, Noon, Noon + Duration.FromHours(5))], TestContext.Current.CancellationToken);

        await parts.GetRequiredService<PassRunner>().RunDueAsync(TestContext.Current.CancellationToken);

        Assert.Equal(1, heard.Sum("nightwatch.letter.queued{}"));
        foreach (var stage in (string[])["sky", "plan", "render", "commit"])
            Assert.True(heard.Times($"nightwatch.stage.duration{{nightwatch.stage={stage}}}") > 0, stage);
    }

    [Fact]
    public async Task What_waits_is_read_when_asked_for_and_silent_before()
    {
        heard.Ask();
        Assert.Empty(heard.Of("nightwatch.outbox.depth"));
        Assert.Empty(heard.Of("nightwatch.tick.age"));
        await gauges.RefreshAsync(TestContext.Current.CancellationToken);
        heard.Ask();
        // A feed that never answered has no age, least of all zero.
        Assert.Empty(heard.Of("nightwatch.feed.age"));
        Assert.Equal(4, heard.Of("nightwatch.outbox.depth").Count());

        await parts.GetRequiredService<Ticker>().TickAsync(TestContext.Current.CancellationToken);
        clock.AdvanceTo(Noon + Duration.FromDays(2));
        await gauges.RefreshAsync(TestContext.Current.CancellationToken);
        heard.Ask();

        Assert.True(heard.Sum("nightwatch.due.open{}") > 0);
        Assert.True(heard.Sum("nightwatch.due.oldest.age{}") > 3600);
        Assert.Equal(2 * 86400, heard.Sum("nightwatch.tick.age{}"));
        Assert.Equal(2 * 86400, heard.Sum("nightwatch.feed.age{nightwatch.feed=fake}"));
    }

    [Fact]
    public async Task Labels_are_words_of_closed_lists_and_tell_nobody_s_name_address_or_place()
    {
        using var listener = new ActivityListener
        {
            ShouldListenTo = source => source.Name == Telemetry.Name,
            Sample = (ref ActivityCreationOptions<ActivityContext> _) => ActivitySamplingResult.AllData,
            ActivityStopped = span => { lock (spans) spans.Add(span); },
        };
        ActivitySource.AddActivityListener(listener);

        await TwoDaysAsync();
        await gauges.RefreshAsync(TestContext.Current.CancellationToken);
        heard.Ask();

        string[] spanTags;
        lock (spans)
            spanTags = [.. spans.SelectMany(span => span.TagObjects.Select(tag => $"{tag.Key}={tag.Value}").Append(span.DisplayName))];
        Assert.Contains("commit", spanTags);
        var said = heard.All.Select(measured => measured.Labels).Concat(spanTags).Distinct().ToList();
        Assert.All(said, labels => Assert.Matches("^([a-z.]+=[A-Za-z_-]+(,|$))*$|^[a-z]+$", labels));
        foreach (var watch in Cast.Watches)
        {
            foreach (var secret in (string[])[watch.Id, watch.Subscriber.Address, watch.Site.Id, watch.Site.Name])
                Assert.DoesNotContain(said, labels => labels.Contains(secret, StringComparison.OrdinalIgnoreCase));
        }

        Assert.InRange(heard.All.Select(measured => measured.Series).Distinct().Count(), 10, 120);
    }

    private async Task TwoDaysAsync()
    {
        var ticker = parts.GetRequiredService<Ticker>();
        for (var hour = 0; hour <= 48; hour += 2)
        {
            clock.AdvanceTo(Noon + Duration.FromHours(hour));
            await ticker.TickAsync(TestContext.Current.CancellationToken);
            Assert.Null(ticker.Trouble);
        }
    }
}

using System.Net;
using Microsoft.Extensions.DependencyInjection;
using NightWatch.Letters.Policy;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Verification;
using NightWatch.Planning.Verification.Outcomes;
using NightWatch.Service.Rehearsal;
using NightWatch.Store.Outcomes;
using NightWatch.Store.Passes;
using NightWatch.Store.Verdicts;
using NodaTime;

namespace NightWatch.Pages.Tests.Records;

public sealed class RecordPageTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_new_watch_has_an_empty_record_that_says_how_it_is_filled()
    {
        await using var world = await PagesWorld.StartAsync();
        using var http = new HttpClient();

        var page = await http.GetStringAsync(world.Links.Record(Cast.Watches[0]), Cancel);

        Assert.Contains("No outcome is known yet", page, StringComparison.Ordinal);
        Assert.Contains("0 nights are not enough evidence", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Nights_that_were_looked_at_and_answered_are_counted_in_plain_words_and_exported()
    {
        await using var world = await PagesWorld.StartAsync();
        using var http = new HttpClient();
        await world.LiveUntilAsync(PagesWorld.At(9, 8));
        var (watch, outcomes) = (Cast.Watches[0], world.Parts.GetRequiredService<OutcomeStore>());
        for (var day = 5; day < 9; day++)
            await outcomes.PutAsync(
                watch.Id, Cast.FirstDay.PlusDays(day), NightOutcome.Cloudy, OutcomeSource.Debrief, world.Clock.GetCurrentInstant(), Cancel);

        var page = await http.GetStringAsync(world.Links.Record(watch), Cancel);
        using var csv = await http.GetAsync(
            world.Links.Record(watch)!.ToString().Replace("/record?", "/record.csv?", StringComparison.Ordinal), Cancel);

        Assert.Contains("The last call before the night was right", page, StringComparison.Ordinal);
        Assert.Contains("drives for nothing", page, StringComparison.Ordinal);
        // All four were answered; only those of free evenings are calls that can be right or wrong.
        var free = Enumerable.Range(5, 4).Count(day => Alternatives.IsFree(watch, Cast.FirstDay.PlusDays(day)));
        Assert.InRange(free, 1, 3);
        Assert.Contains($"{free} by your own word", page, StringComparison.Ordinal);
        Assert.Contains("that are not free", page, StringComparison.Ordinal);
        Assert.Contains("<svg", page, StringComparison.Ordinal);
        Assert.Equal("text/csv", csv.Content.Headers.ContentType?.MediaType);
        var lines = (await csv.Content.ReadAsStringAsync(Cancel)).Split("\r\n");
        Assert.StartsWith("night,leadNights,", lines[0], StringComparison.Ordinal);
        Assert.Contains(lines, line => line.Contains(",cloudy,debrief,", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_long_record_shows_the_measures_of_an_archive_and_who_tells_what_came()
    {
        await using var world = await PagesWorld.StartAsync();
        using var http = new HttpClient();
        await RecordAsync(world, 120);

        var page = await http.GetStringAsync(world.Links.Record(Cast.Watches[0]), Cancel);

        Assert.Contains("The measures, by how far ahead", page, StringComparison.Ordinal);
        Assert.Contains("Always going", page, StringComparison.Ordinal);
        // The chart says its message in words, and the same stands in a table.
        Assert.Contains("<title>Your own word: ", page, StringComparison.Ordinal);
        Assert.Contains(">Aerodrome, automatic</th>", page, StringComparison.Ordinal);
        Assert.Contains("saw too little to tell", page, StringComparison.Ordinal);
    }

    /// <summary>
    /// Every evening looked at: a third good by the later run, which a station cannot tell; it tells of half of the others.
    /// </summary>
    private static async Task RecordAsync(PagesWorld world, int nights)
    {
        var (watch, outcomes, now) = (Cast.Watches[0], world.Parts.GetRequiredService<OutcomeStore>(), world.Clock.GetCurrentInstant());
        var verdicts = new List<VerdictRecord>();
        for (var day = 0; day < nights; day++)
        {
            var (night, isGood) = (Cast.FirstDay.PlusDays(-day - 1), day % 3 == 0);
            verdicts.Add(Look(watch.Id, night, 0, isGood == (day % 9 != 0) ? 0.85 : 0.15));
            verdicts.Add(Look(watch.Id, night, 1, isGood ? 0.65 : 0.35));
            if (day % 10 == 0) await outcomes.PutAsync(watch.Id, night, NightOutcome.Stayed, OutcomeSource.Debrief, now, Cancel);
            else if (day % 5 == 0)
                await outcomes.PutAsync(
                    watch.Id, night, isGood ? NightOutcome.Clear : NightOutcome.Cloudy, OutcomeSource.Debrief, now, Cancel);
            await outcomes.PutAsync(
                watch.Id,
                night,
                isGood || day % 2 == 0 ? NightOutcome.NotTold : NightOutcome.Cloudy,
                OutcomeSource.AutomaticMetar,
                now,
                Cancel);
            if (day % 8 != 0)
                await outcomes.PutAsync(
                    watch.Id, night, isGood ? NightOutcome.Clear : NightOutcome.Cloudy, OutcomeSource.Analysis, now, Cancel);
        }

        await world.Parts.GetRequiredService<PassStore>().CommitAsync(new PassCommit { Verdicts = verdicts }, now, Cancel);
    }

    private static VerdictRecord Look(string watchId, LocalDate night, int lead, double probability) => new()
    {
        WatchId = watchId,
        Night = night,
        Pass = PassKind.Evening,
        At = night.PlusDays(-lead).At(new LocalTime(9, 0)).InUtc().ToInstant(),
        Verdict = new()
        {
            Class = probability > 0.5 ? VerdictClass.Go : VerdictClass.NoGo,
            Run = null,
            Probability = new(probability, ProbabilityBasis.LaggedRuns, 2),
            Reasons = [],
        },
        FeedId = "met-norway",
        LeadNights = lead,
        InputsHash = "5f2c",
        Why = "as a test",
    };

    [Theory]
    [InlineData("record?k=AAAAAAAAAAAAAAAAAAAAAA")]
    [InlineData("record")]
    [InlineData("record.csv?k=AAAAAAAAAAAAAAAAAAAAAA")]
    public async Task Without_its_signature_it_opens_nothing(string tail)
    {
        await using var world = await PagesWorld.StartAsync();
        using var http = new HttpClient();

        Assert.Equal(
            HttpStatusCode.NotFound, (await http.GetAsync(new Uri(world.Base, $"watches/{Cast.Watches[0].Id}/{tail}"), Cancel)).StatusCode);
    }
}

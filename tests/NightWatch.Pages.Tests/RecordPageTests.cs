using System.Net;
using Microsoft.Extensions.DependencyInjection;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Verification.Outcomes;
using NightWatch.Service.Rehearsal;
using NightWatch.Store.Outcomes;

namespace NightWatch.Pages.Tests;

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
        for (var day = 5; day < 9; day++) await outcomes.PutAsync(watch.Id, Cast.FirstDay.PlusDays(day), NightOutcome.Cloudy, OutcomeSource.Debrief, world.Clock.GetCurrentInstant(), Cancel);

        var page = await http.GetStringAsync(world.Links.Record(watch), Cancel);
        using var csv = await http.GetAsync(world.Links.Record(watch)!.ToString().Replace("/record?", "/record.csv?", StringComparison.Ordinal), Cancel);

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

    [Theory]
    [InlineData("record?k=AAAAAAAAAAAAAAAAAAAAAA")]
    [InlineData("record")]
    [InlineData("record.csv?k=AAAAAAAAAAAAAAAAAAAAAA")]
    public async Task Without_its_signature_it_opens_nothing(string tail)
    {
        await using var world = await PagesWorld.StartAsync();
        using var http = new HttpClient();

        Assert.Equal(HttpStatusCode.NotFound, (await http.GetAsync(new Uri(world.Base, $"watches/{Cast.Watches[0].Id}/{tail}"), Cancel)).StatusCode);
    }
}

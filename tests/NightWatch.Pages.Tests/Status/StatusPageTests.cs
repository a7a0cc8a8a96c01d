using AngleSharp.Html.Parser;
using NightWatch.Service.Rehearsal;
using NodaTime;

namespace NightWatch.Pages.Tests.Status;

/// <summary>How the service does, told to anybody.</summary>
[Collection("afternoon")]
public sealed class StatusPageTests(Afternoon world)
{
    [Fact]
    public async Task It_tells_last_look_queue_feeds_database_and_zone_data()
    {
        var text = await TextAsync();

        foreach (
            var said in (string[])
                [
                    "Last look at what is due", "Letters that wait", "Letters given up", "SQLite", DateTimeZoneProviders.Tzdb.VersionId,
                    "fake", "answered", "Nothing is learnt yet",
                ])
            Assert.Contains(said, text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task It_tells_nothing_of_any_person()
    {
        var text = await TextAsync();

        foreach (var watch in Cast.Watches)
        {
            foreach (var secret in (string[])[watch.Id, watch.Site.Name, watch.Subscriber.Name, watch.Subscriber.Address, "marlo"])
                Assert.DoesNotContain(secret, text, StringComparison.OrdinalIgnoreCase);
        }
    }

    private async Task<string> TextAsync()
    {
        using var http = new HttpClient();
        var html = await http.GetStringAsync(new Uri(world.World.Base, "status"), TestContext.Current.CancellationToken);
        return new HtmlParser().ParseDocument(html).Body!.TextContent + html;
    }
}

using NightWatch.Store.Calendar;
using NightWatch.Store.Tests.Databases;

namespace NightWatch.Store.Tests.Calendar;

public sealed class CalendarFeedsOnSqlite() : CalendarFeedPromises(new SqliteTestDatabase());

public sealed class CalendarFeedsOnPostgres() : CalendarFeedPromises(new PostgresTestDatabase());

public abstract class CalendarFeedPromises(TestDatabase tested) : StoreTest(tested)
{
    private CalendarFeedStore Feeds => new(Database);

    [Fact]
    public async Task A_token_opens_its_feed_until_it_is_revoked_and_then_the_next_one_does()
    {
        static string Token(long generation) => $"token {generation}";

        Assert.Equal("token 0", await Feeds.TokenAsync("Ilse@example.org", Token, Given.Now, Cancel));
        Assert.Equal("token 0", await Feeds.TokenAsync("ilse@example.org", Token, Given.Now, Cancel));
        Assert.Equal("ilse@example.org", await Feeds.AddressOfAsync("token 0", Cancel));

        Assert.Equal("token 1", await Feeds.RevokeAsync("ilse@example.org", Token, Given.Now, Cancel));
        Assert.Null(await Feeds.AddressOfAsync("token 0", Cancel));
        Assert.Equal("ilse@example.org", await Feeds.AddressOfAsync("token 1", Cancel));
        Assert.Equal("token 1", await Feeds.TokenAsync("ilse@example.org", Token, Given.Now, Cancel));
        Assert.Equal("token 2", await Feeds.RevokeAsync("ilse@example.org", Token, Given.Now, Cancel));
    }

    [Fact]
    public async Task A_feed_revoked_before_it_was_ever_given_out_never_opens_by_its_first_token()
    {
        static string Token(long generation) => $"early {generation}";
        Assert.Equal("early 1", await Feeds.RevokeAsync("ilse@example.org", Token, Given.Now, Cancel));
        Assert.Equal("early 1", await Feeds.TokenAsync("ilse@example.org", Token, Given.Now, Cancel));
        Assert.Null(await Feeds.AddressOfAsync("early 0", Cancel));
    }
}

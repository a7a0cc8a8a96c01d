using System.Diagnostics;
using System.Globalization;
using NightWatch.Bench.Forecasts;
using NightWatch.Store.Connections;
using NightWatch.Store.Watches;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.Fetching;
using NodaTime;

namespace NightWatch.Bench.Load;

/// <summary>Fills a database with watches and with the answers that a feed gave for their sites over the day before.</summary>
internal static class LoadDatabase
{
    private const int InOneTransaction = 250;

    private static readonly Duration RunEvery = Duration.FromHours(6);

    public static async Task<int> MakeAsync(string setting, int watches, int sites, int runs, int members)
    {
        var since = Stopwatch.GetTimestamp();
        await using var database = Database.Open(setting);
        await database.MigrateAsync();
        var now = LoadWatches.At(17, 0);
        await InPartsAsync(database, sites, (session, number) => SiteStore.PutAsync(session, LoadWatches.SiteOf(number, sites), now));
        await InPartsAsync(
            database, watches, (session, number) => WatchStore.PutAsync(session, LoadWatches.WatchOf(number, watches, sites), now));
        var newest = LoadWatches.At(18, 30);
        var bodies = new StoredBodies(newest, different: 200, members);
        for (var back = runs - 1; back >= 0; back--)
        {
            var retrieved = newest - back * RunEvery;
            await InPartsAsync(
                database,
                sites,
                (session, number) => AddAsync(session, "open-meteo", number, sites, bodies.PackedForecast(number + back), retrieved));
        }

        if (members > 0)
            await InPartsAsync(
                database,
                sites,
                (session, number) => AddAsync(session, "open-meteo-ensemble/members", number, sites, bodies.PackedEnsemble(number), newest)
            );
        Console.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"{watches:N0} watches, {sites:N0} sites, {runs} kept runs a site, {members} members: " +
                $"{Stopwatch.GetElapsedTime(since).TotalSeconds:F0} s to make"));
        return 0;
    }

    private static Task<int> AddAsync(
        NightWatch.Store.Connections.Session session, string feed, int number, int sites, byte[] packed, Instant retrieved)
    {
        var position = LoadWatches.SiteOf(number, sites).Position;
        var cell = FeedCell.Of(new ForecastPlace(position.LatitudeDeg, position.LongitudeDeg, position.ElevationM)).Key;
        return session.ExecuteAsync(
            "INSERT INTO forecast (feed, cell, retrieved_at, expires_at, body, series) VALUES (@feed, @cell, @retrieved, @expires, " +
            "@none, @packed)",
            new { feed, cell, retrieved, expires = retrieved + RunEvery, none = Array.Empty<byte>(), packed });
    }

    private static async Task InPartsAsync(Database database, int count, Func<NightWatch.Store.Connections.Session, int, Task> put)
    {
        for (var first = 0; first < count; first += InOneTransaction)
        {
            await database.WriteAsync(
                async session =>
                {
                    for (var number = first; number < Math.Min(count, first + InOneTransaction); number++) await put(session, number);
                    return 0;
                },
                CancellationToken.None);
        }
    }
}

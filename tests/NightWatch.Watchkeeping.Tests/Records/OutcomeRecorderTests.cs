using System.Globalization;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using NightWatch.Planning.Verification.Outcomes;
using NightWatch.Planning.Watches;
using NightWatch.Service.Hosting;
using NightWatch.Service.Rehearsal;
using NightWatch.Service.Settings;
using NightWatch.Store.Connections;
using NightWatch.Store.Outcomes;
using NightWatch.Store.Watches;
using NightWatch.Watchkeeping.Evaluations;
using NightWatch.Watchkeeping.Forecasts;
using NightWatch.Watchkeeping.Records;
using NightWatch.Weather.Fake;
using NightWatch.Weather.Tests.Loopback;
using NodaTime;

namespace NightWatch.Watchkeeping.Tests.Records;

/// <summary>The service's own parts on invented weather, whose truth is known, with aerodrome reports from a server on loopback.</summary>
public sealed class OutcomeRecorderTests : IAsyncLifetime
{
    private static readonly Watch Watch = Cast.Watches[0];
    private static readonly LocalDate First = Cast.FirstDay.PlusDays(5); // from here on the Moon leaves dark hours

    private readonly string folder = Directory.CreateTempSubdirectory("nightwatch-outcomes-").FullName;
    private readonly VirtualClock clock = new(At(0, 18));
    private FeedServer aerodromes = null!;
    private ServiceProvider parts = null!;
    private string reports = "[]";

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private OutcomeStore Outcomes => parts.GetRequiredService<OutcomeStore>();

    private OutcomeRecorder Recorder => parts.GetRequiredService<OutcomeRecorder>();

    public async ValueTask InitializeAsync()
    {
        aerodromes = await FeedServer.StartAsync((_, http) => http.Json(reports));
        await OpenAsync(new ObservationsOptions());
    }

    public async ValueTask DisposeAsync()
    {
        await parts.DisposeAsync();
        await aerodromes.DisposeAsync();
        Directory.Delete(folder, recursive: true);
    }

    [Fact]
    public async Task A_night_that_is_over_is_written_down_once_as_the_weather_that_came_had_it()
    {
        var truth = new Truth(new FakeWeather(1), new SharedSky());
        var came = new List<NightOutcome?>();
        for (var day = 0; day < 6; day++)
        {
            await AskAsync(day, 18);
            clock.AdvanceTo(At(day, 23));
            await Recorder.RecordAsync(clock.GetCurrentInstant(), Cancel);
            if (day > 0) came.Add(WeatherOutcome.Of(await truth.OfAsync(Watch, First.PlusDays(day - 1), Cancel)));
        }

        var said = await Outcomes.OfWatchAsync(Watch.Id, First, First.PlusDays(9), Cancel);

        Assert.Equal(
            came.Index().Where(night => night.Item is not null).Select(night => (First.PlusDays(night.Index), night.Item)),
            said.Select(night => (night.Night, (NightOutcome?)night.Outcome)));
        Assert.True(came.Distinct().Count() > 1, "the nights should differ, or this proves little");
        Assert.All(
            said,
            night =>
                Assert.Equal(
                    (OutcomeSource.Analysis, "By later runs of fake over the hours of the night; no observation, and kind to that feed."),
                    (night.Source, night.Note)));
        Assert.Equal(0, await Recorder.RecordAsync(clock.GetCurrentInstant(), Cancel));
    }

    [Fact]
    public async Task A_night_whose_later_runs_are_not_there_yet_waits()
    {
        await AskAsync(0, 18);

        await Recorder.RecordAsync(At(1, 13), Cancel);
        Assert.Empty(await Outcomes.OfNightAsync(Watch.Id, First, Cancel));

        await AskAsync(1, 18);
        await Recorder.RecordAsync(At(1, 23), Cancel);
        Assert.Single(await Outcomes.OfNightAsync(Watch.Id, First, Cancel));
    }

    [Fact]
    public async Task The_nearest_aerodrome_within_reach_has_its_own_say()
    {
        await OpenAsync(new ObservationsOptions { LaterRuns = false, AerodromeKm = 40, AerodromeUrl = aerodromes.Url.ToString() });
        // Both overcast all night and near the site, one nearer; one clear but too far away.
        reports = Reports(("YNEA", -35.0, 141.7, "OVC"), ("YMID", -35.2, 141.5, "OVC"), ("YFAR", -36.0, 141.7, "FEW"));

        Assert.Equal(1, await Recorder.RecordAsync(At(1, 23), Cancel));

        var said = Assert.Single(await Outcomes.OfNightAsync(Watch.Id, First, Cancel));
        Assert.Equal((OutcomeSource.Metar, NightOutcome.Cloudy), (said.Source, said.Outcome));
        Assert.Contains("By reports of YNEA, 6 km away", said.Note, StringComparison.Ordinal);
        Assert.Contains("ids=YNEA&", aerodromes.Seen[^1].PathAndQuery, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("CLR", "METAR YNEA 010000Z AUTO 00000KT 10SM CLR 10/05 A2992", OutcomeSource.AutomaticMetar, NightOutcome.NotTold)]
    [InlineData("OVC", "METAR YNEA 010000Z AUTO 00000KT 10SM OVC020 10/05 A2992", OutcomeSource.AutomaticMetar, NightOutcome.Cloudy)]
    [InlineData("BKN", "METAR YNEA 010000Z AUTO 00000KT 10SM BKN020 10/05 A2992", OutcomeSource.AutomaticMetar, NightOutcome.Cloudy)]
    [InlineData("CAVOK", "METAR YNEA 010000Z 00000KT CAVOK 10/05 Q1020", OutcomeSource.Metar, NightOutcome.NotTold)]
    [InlineData("SKC", "METAR YNEA 010000Z 00000KT 9999 SKC 10/05 Q1020", OutcomeSource.Metar, NightOutcome.Clear)]
    public async Task A_station_tells_of_a_night_what_holds_whatever_it_could_not_see(
        string cover, string raw, OutcomeSource by, NightOutcome was)
    {
        await OpenAsync(new ObservationsOptions { LaterRuns = false, AerodromeKm = 40, AerodromeUrl = aerodromes.Url.ToString() });
        reports = Reports(("YNEA", -35.0, 141.7, cover)).Replace("\"visib\"", $"\"rawOb\": \"{raw}\", \"visib\"", StringComparison.Ordinal);

        Assert.Equal(1, await Recorder.RecordAsync(At(1, 23), Cancel));

        var said = Assert.Single(await Outcomes.OfNightAsync(Watch.Id, First, Cancel));
        Assert.Equal((by, was), (said.Source, said.Outcome));
        // A night that is not told is kept with the reason.
        Assert.Equal(was == NightOutcome.NotTold, said.Note!.Contains("was out of sight", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_host_that_has_no_reports_is_asked_again_later_and_nothing_is_made_up()
    {
        await OpenAsync(new ObservationsOptions { LaterRuns = false, AerodromeKm = 40, AerodromeUrl = aerodromes.Url.ToString() });

        Assert.Equal(0, await Recorder.RecordAsync(At(1, 23), Cancel));
        reports = Reports(("YNEA", -35.0, 141.7, "OVC"));
        Assert.Equal(1, await Recorder.RecordAsync(At(2, 2), Cancel));
    }

    [Fact]
    public async Task A_night_that_could_not_be_written_down_is_taken_up_again()
    {
        await OpenAsync(new ObservationsOptions { LaterRuns = false, AerodromeKm = 40, AerodromeUrl = aerodromes.Url.ToString() });
        reports = Reports(("YNEA", -35.0, 141.7, "OVC"));
        await ExecuteAsync("ALTER TABLE outcome RENAME TO away");

        Assert.Equal(0, await Recorder.RecordAsync(At(1, 23), Cancel));
        await ExecuteAsync("ALTER TABLE away RENAME TO outcome");

        Assert.Equal(1, await Recorder.RecordAsync(At(2, 2), Cancel));
    }

    private static Instant At(int day, int hour) =>
        First.PlusDays(day).At(new LocalTime(hour, 30)).InZoneLeniently(Watch.Site.Zone).ToInstant();

    private static string Reports(params (string Station, double Lat, double Lon, string Cover)[] stations) =>
        "["
        + string.Join(
            ',',
            from station in stations
            from hour in Enumerable.Range(0, 24)
            let at = First.At(new LocalTime(12, 0)).InZoneLeniently(Watch.Site.Zone).ToInstant() + Duration.FromHours(hour)
            select string.Create(
                CultureInfo.InvariantCulture,
                $$"""{ "icaoId": "{{station.Station}}", "obsTime": {{at.ToUnixTimeSeconds()}}, "lat": {{station.Lat}}""" +
                $$""", "lon": {{station.Lon}}, "visib": "6+", "clouds": [ { "cover": "{{station.Cover}}" } ] }"""
            ))
        + "]";

    private async Task ExecuteAsync(string sql)
    {
        await using var connection = new SqliteConnection($"Data Source={Path.Combine(folder, "kept.db")};Pooling=false");
        await connection.OpenAsync(Cancel);
        await using var command = connection.CreateCommand();
        command.CommandText = sql;
        await command.ExecuteNonQueryAsync(Cancel);
    }

    private async Task AskAsync(int day, int hour)
    {
        clock.AdvanceTo(At(day, hour));
        await parts.GetRequiredService<ForecastSource>().BeginPass(Cancel).AskAsync(NightEvaluation.PlaceOf(Watch));
    }

    private async Task OpenAsync(ObservationsOptions observations)
    {
        if (parts is not null) await parts.DisposeAsync();
        var settings = AllSettings.ForRehearsal(Path.Combine(folder, "kept.db"), Path.Combine(folder, "letters"), seed: 1) with
        {
            Observations = observations,
        };
        settings.Feeds.Contact = "ops@example.org";
        Assert.Empty(settings.Faults());
        parts = new ServiceCollection()
            .AddLogging(logging => logging.ClearProviders())
            .AddSingleton<IClock>(clock).AddSingleton<TimeProvider>(clock)
            .AddNightWatch(settings)
            .BuildServiceProvider();
        await parts.GetRequiredService<Database>().MigrateAsync(Cancel);
        await parts.GetRequiredService<WatchStore>().PutAsync(Watch, At(0, 12), Cancel);
    }
}

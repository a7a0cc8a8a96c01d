using System.Diagnostics;
using NightWatch.Weather;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.Packing;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Bench.Forecasts;

/// <summary>
/// Bytes of a stored forecast and the time of reading and writing one, beside those of the feed's own body, as it was kept before.
/// </summary>
internal static class StoredForecasts
{
    private const int Members = 40;
    private const int Rounds = 5;

    private static readonly Instant Now = Instant.FromUtc(2027, 3, 4, 12, 7);

    /// <param name="recorded">Feeds and files with a body of each.</param>
    public static int Run(string[] recorded)
    {
        foreach (var pair in recorded.Chunk(2)) Recorded(ForecastReaders.For(pair[0]), File.ReadAllBytes(pair[1]));
        var bodies = new StoredBodies(Now, different: 40, Members);
        Line("forecast, bytes", bodies.MeanBytes(ensemble: false));
        Line(
            "forecast, microseconds to read",
            (Micros(number => bodies.Forecast(number, Now), 400), Micros(number => bodies.OldForecast(number, Now), 400)));
        Line($"{Members} members, bytes", bodies.MeanBytes(ensemble: true));
        Line(
            $"{Members} members, microseconds to read",
            (Micros(number => bodies.Ensemble(number), 100), Micros(number => bodies.OldEnsemble(number), 100)));
        ForecastSeries[] one = [bodies.Forecast(0, Now)];
        Console.WriteLine(
            FormattableString.Invariant($"forecast, microseconds to pack          {Micros(_ => SeriesPack.Pack(one), 200),10:N0}"));
        return 0;
    }

    private static void Recorded(IForecastReader reader, byte[] body)
    {
        var before = StoredBodies.Gzipped(body);
        var packed = SeriesPack.Pack([reader.Read(body, Now)]);
        Line($"{reader.FeedId}, bytes", (packed.Length, before.Length));
        Line(
            $"{reader.FeedId}, microseconds to read",
            (Micros(_ => SeriesPack.Unpack(packed, 1, Now)[0], 400), Micros(_ => reader.Read(StoredBodies.Ungzipped(before), Now), 400)));
    }

    private static void Line(string what, (double Now, double Before) measured) => Console.WriteLine(FormattableString.Invariant(
        $"{what,-38}  {measured.Now,10:N0}  before {measured.Before,10:N0}  {measured.Before / measured.Now,5:F1} times less"));

    /// <summary>The best of a few rounds: what else the machine does only adds.</summary>
    private static double Micros(Func<int, object> work, int times)
    {
        for (var i = 0; i < times / 4; i++) work(i);
        return Enumerable.Range(0, Rounds).Min(_ =>
        {
            var since = Stopwatch.GetTimestamp();
            for (var i = 0; i < times; i++) work(i);
            return Stopwatch.GetElapsedTime(since).TotalMicroseconds / times;
        });
    }
}

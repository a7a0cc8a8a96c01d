using NightWatch.Service.Settings;
using NightWatch.Weather;
using NightWatch.Weather.Feeds;

namespace NightWatch.Service.Commands.Checks;

/// <summary>Each feed answers for a place that all of them cover.</summary>
internal static class FeedCheck
{
    private static readonly ForecastPlace Somewhere = new(40.0, -105.3, 1700);

    public static async Task<Finding> RunAsync(AllSettings settings, Shell shell, CancellationToken stop)
    {
        if (settings.Feeds.Faults().Count > 0) return new Finding("feed", false, "not tried, as its configuration is wrong.");
        await using var parts = new ServiceCollection()
            .AddSingleton(shell.Clock).AddSingleton(TimeProvider.System).AddLogging(logging => logging.ClearProviders())
            .AddHttpClient().AddWeatherFeeds(settings.Feeds.ToWeather())
            .BuildServiceProvider();
        var said = new List<string>();
        var ok = true;
        foreach (var feed in parts.GetServices<IForecastFeed>())
        {
            var (well, text) = await AskAsync(feed, stop);
            ok &= well;
            said.Add($"{feed.Id} {text}");
        }

        return new Finding("feed", ok, string.Join("; ", said) + ".");
    }

    private static async Task<(bool Well, string Text)> AskAsync(IForecastFeed feed, CancellationToken stop)
    {
        try
        {
            return await feed.FetchAsync(Somewhere, null, stop) switch
            {
                Fetched.Fresh fresh => (true, $"answers with {fresh.Series.Instants.Sum(quantity => quantity.Value.Length)} values"),
                Fetched.Unavailable unavailable => (false, $"does not answer: {unavailable.Why.TrimEnd('.')}"),
                _ => (true, "answers"),
            };
        }
        catch (Exception failure) when (failure is not OperationCanceledException)
        {
            return (false, $"failed: {failure.Message.TrimEnd('.')}");
        }
    }
}

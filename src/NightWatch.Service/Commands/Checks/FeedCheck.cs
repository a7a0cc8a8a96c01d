using NightWatch.Service.Terminal;
using NightWatch.Weather.Feeds;

namespace NightWatch.Service.Commands.Checks;

/// <summary>Each feed answers for a place that all of them cover. One that stands in may fail; all of them may not.</summary>
internal static class FeedCheck
{
    private static readonly ForecastPlace Somewhere = new(40.0, -105.3, 1700);

    public static async Task<IReadOnlyList<Finding>> RunAsync(CheckBench bench, CancellationToken stop)
    {
        var options = bench.Settings.Feeds;
        if (options.Faults().Count > 0) return [Finding.Fault("feed", "not tried, as its configuration is wrong.")];
        var services = LiveFeeds.Of(options.ToWeather() with { Retries = 0 }, bench.Shell.Clock);
        services.ConfigureHttpClientDefaults(client => client.AddHttpMessageHandler(bench.Clocks.Listener));
        await using var parts = services.BuildServiceProvider();
        var answers = new List<(string Id, bool Well, bool MustAct, string Text)>();
        foreach (var feed in parts.GetServices<IForecastFeed>()) answers.Add(await AskAsync(feed, stop));
        var anyWell = answers.Any(answer => answer.Well);
        List<Finding> said = [.. answers.Select(answer => new Finding(
            "feed", answer.Well ? Level.Ok : anyWell && !answer.MustAct ? Level.Warning : Level.Fault, $"{answer.Id} {answer.Text}."))];
        if (parts.GetService<IEnsembleFeed>() is { } ensemble) said.Add(await AskAsync(ensemble, stop));
        return said;
    }

    private static async Task<(string Id, bool Well, bool MustAct, string Text)> AskAsync(IForecastFeed feed, CancellationToken stop)
    {
        try
        {
            return await feed.FetchAsync(Somewhere, null, stop) switch
            {
                Fetched.Fresh fresh => (
                    feed.Id, true, false, $"answers with {fresh.Series.Instants.Sum(quantity => quantity.Value.Length)} values"),
                Fetched.Unavailable none => (feed.Id, false, none.OperatorMustAct, $"does not answer: {none.Why.TrimEnd('.')}"),
                _ => (feed.Id, true, false, "answers"),
            };
        }
        catch (Exception failure) when (failure is not OperationCanceledException)
        {
            return (feed.Id, false, true, $"failed: {failure.Message.TrimEnd('.')}");
        }
    }

    /// <summary>Without members the probability rests on less; the service goes on.</summary>
    private static async Task<Finding> AskAsync(IEnsembleFeed ensemble, CancellationToken stop)
    {
        try
        {
            return await ensemble.FetchMembersAsync(Somewhere, null, stop) switch
            {
                FetchedMembers.Fresh fresh => Finding.Ok("feed", $"{ensemble.Id} answers with {fresh.Members.Length} members."),
                FetchedMembers.Unavailable none => Finding.Warning(
                    "feed", $"{ensemble.Id} does not answer: {none.Reason.Why.TrimEnd('.')}; probabilities rest on the agreement of runs."),
                _ => Finding.Ok("feed", $"{ensemble.Id} answers."),
            };
        }
        catch (Exception failure) when (failure is not OperationCanceledException)
        {
            return Finding.Warning("feed", $"{ensemble.Id} failed: {failure.Message.TrimEnd('.')}.");
        }
    }
}

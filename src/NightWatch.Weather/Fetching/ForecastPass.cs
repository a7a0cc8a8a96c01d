using System.Collections.Immutable;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.Known;
using NightWatch.Weather.Rain;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Weather.Fetching;

/// <summary>One pass: places that lie in one cell share one fetch, also when they ask at the same time.</summary>
public sealed class ForecastPass
{
    /// <summary>Several passes see the same run, so more answers are looked through than runs are wanted.</summary>
    private const int AnswersPerRun = 2;

    private readonly PassCells<PlaceWeather> cells = new();
    private readonly FeedAsker asker;
    private readonly ReadAnswers read;
    private readonly IRainArchive rain;
    private readonly IReadOnlyList<IForecastFeed> feeds;
    private readonly IEnsembleFeed? ensemble;
    private readonly IClock clock;
    private readonly FetchRules rules;
    private readonly int earlierRuns;
    private readonly bool secondOpinion;
    private readonly CancellationToken stop;

    internal ForecastPass(
        FeedAsker asker,
        ReadAnswers read,
        IRainArchive rain,
        IReadOnlyList<IForecastFeed> feeds,
        IEnsembleFeed? ensemble,
        IClock clock,
        FetchRules rules,
        int earlierRuns,
        bool secondOpinion,
        CancellationToken stop) =>
        (
            this.asker, this.read, this.rain,
            this.feeds, this.ensemble, this.clock,
            this.rules, this.earlierRuns,
            this.secondOpinion, this.stop) = (asker, read, rain, feeds, ensemble, clock, rules, earlierRuns, secondOpinion, stop);

    /// <summary>The weather of a place.</summary>
    /// <remarks>
    /// The first feed with a good run is used. Where none has one, the youngest stale run is, and the answer says so. There are no members
    /// where there is no ensemble, or only one that is too old. It does not throw for what a feed does.
    /// </remarks>
    public Task<PlaceWeather> WeatherAsync(ForecastPlace place)
    {
        var cell = FeedCell.Of(place);
        return cells.GetOrAdd(cell.Key, async isFirst =>
        {
            var weather = await AskFeedsAsync(cell, isFirst);
            return ensemble is null ? weather : await WithMembersAsync(weather, ensemble, cell, isFirst);
        });
    }

    private async Task<PlaceWeather> AskFeedsAsync(FeedCell cell, bool mayAsk)
    {
        var notes = ImmutableArray.CreateBuilder<FeedNote>();
        ImmutableArray<ForecastSeries> chosen = [];
        ImmutableArray<ForecastSeries> youngestStale = [];
        ForecastSeries? second = null;
        var news = new HashSet<string>();
        foreach (var feed in feeds)
        {
            var (kept, isNews, note) = await asker.RunsAsync(feed, cell, 1 + AnswersPerRun * earlierRuns, mayAsk, stop);
            if (note is not null)
                notes.Add(note);
            if (isNews)
                news.Add(feed.Id);
            var runs = Read(kept, feed.Id, notes);
            if (runs.IsEmpty)
                continue;
            var now = clock.GetCurrentInstant();
            switch (rules.Judge(runs[0].RetrievedAt, runs[0].IssuedAt, now))
            {
                case Freshness.Good when chosen.IsEmpty:
                    chosen = runs;
                    break;
                case Freshness.Good:
                    second = runs[0];
                    break;
                case Freshness.Stale when youngestStale.IsEmpty || FetchRules.Age(runs[0], now) < FetchRules.Age(youngestStale[0], now):
                    youngestStale = runs;
                    break;
            }

            if (second is not null || (!chosen.IsEmpty && !secondOpinion))
                break;
        }

        var used = chosen.IsEmpty ? youngestStale : chosen;
        return new PlaceWeather
        {
            Newest = used.FirstOrDefault(),
            EarlierRuns = used.IsEmpty ? [] : used.RemoveAt(0),
            SecondOpinion = second,
            IsStale = chosen.IsEmpty && !youngestStale.IsEmpty,
            Age = used.IsEmpty ? null : FetchRules.Age(used[0], clock.GetCurrentInstant()),
            Rain = await RainAsync(cell, used.Where(run => news.Contains(run.FeedId))),
            Notes = notes.ToImmutable(),
        };
    }

    /// <summary>Only the forecast that is used speaks of the rain, or the feeds would overwrite each other at every pass.</summary>
    private async Task<ImmutableArray<RainEntry>> RainAsync(FeedCell cell, IEnumerable<ForecastSeries> news)
    {
        if (news.FirstOrDefault() is { } newest)
            await rain.MergeAsync(cell.Key, RainLedger.Entries(newest), stop);
        return [.. await rain.SinceAsync(cell.Key, clock.GetCurrentInstant() - RainLedger.LongestPast, stop)];
    }

    private async Task<PlaceWeather> WithMembersAsync(PlaceWeather weather, IEnsembleFeed feed, FeedCell cell, bool mayAsk)
    {
        var (kept, note) = await asker.MembersAsync(feed, cell, mayAsk, stop);
        var notes = note is null ? weather.Notes : weather.Notes.Add(note);
        if (kept.Count == 0 || rules.Judge(kept[0].Head.RetrievedAt, null, clock.GetCurrentInstant()) == Freshness.TooOld)
            return weather with { Notes = notes };
        try
        {
            return weather with { Members = read.GetOrRead(kept[0]), Notes = notes };
        }
        catch (ForecastFormatException e)
        {
            return weather with { Notes = notes.Add(new FeedNote(feed.Id, $"A kept answer cannot be read: {e.Message}", false)) };
        }
    }

    /// <summary>The newest run and the earlier ones that are wanted; no more answers are read than that takes.</summary>
    private ImmutableArray<ForecastSeries> Read(IReadOnlyList<KeptAnswer> kept, string feedId, ImmutableArray<FeedNote>.Builder notes)
    {
        var answers = new List<ForecastSeries>(kept.Count);
        ImmutableArray<ForecastSeries> runs = [];
        foreach (var answer in kept)
        {
            try
            {
                answers.Add(read.GetOrRead(answer)[0]);
                runs = rules.Distinct(answers, earlierRuns + 1);
                if (runs.Length > earlierRuns)
                    break;
            }
            catch (ForecastFormatException e)
            {
                notes.Add(new FeedNote(feedId, $"A kept answer cannot be read: {e.Message}", false));
            }
        }

        return runs;
    }
}

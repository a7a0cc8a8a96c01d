using NightWatch.Planning.Conditions;
using NightWatch.Planning.Grid;
using NightWatch.Planning.Reasons;
using NightWatch.Planning.Verification;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Planning.Verdicts;

/// <summary>How likely the night is usable: by ensemble members, else by earlier runs, else by published forecast skill.</summary>
/// <remarks>
/// Every member and every earlier run goes through the same search as the main forecast; it passes when it has a run of the wished
/// length without a stop. A quantity that it lacks altogether is taken from the main forecast. Ensembles of cloud are too sure of
/// themselves (Baran et al. 2021), so the share is held between <see cref="Least"/> and <see cref="Most"/> until verification earns more.
/// </remarks>
internal static class UsableChance
{
    public const double Least = 0.05;
    public const double Most = 0.95;

    /// <summary>Fewer members say too little of a distribution (engineering choice).</summary>
    private const int FewestMembers = 5;

    /// <summary>Fewer earlier runs show no trend (engineering choice).</summary>
    private const int FewestEarlierRuns = 2;

    /// <summary>The published prior weighs as much as this many runs beside a handful of lagged ones (engineering choice).</summary>
    private const double PriorRuns = 2;

    /// <summary>Without any knowledge of the weather: even chances.</summary>
    private const double Even = 0.5;

    /// <param name="night">The main forecast's evidence.</param>
    /// <param name="run">The run chosen from it.</param>
    /// <param name="worst">Its worst reason over the run: a night the main forecast stops is not lifted by the prior.</param>
    public static Probability Of(NightEvidence night, Run run, Severity worst)
    {
        var found = ByMembers(night) ?? ByEarlierRuns(night, run, worst) ?? ByPrior(night, run, worst);
        if (SecondOpinion.Of(night, run) is { Differs: true } second)
        {
            var lowered = Math.Min(found.Value, (found.Value + second.Chance) / 2);
            found = found with { Value = lowered, IsLowered = true };
        }

        return found with { Value = Math.Clamp(found.Value, Least, Most) };
    }

    /// <summary>Chance by the published skill alone, for any forecast over a run.</summary>
    public static double Prior(NightEvidence night, WeatherTrack weather, Run run, Instant? issuedAt)
    {
        var lead = (run.Span.Start - (issuedAt ?? night.Inputs.Now)).TotalHours;
        var cloud = new MeanScale(weather.Cloud, night.Limits.Cloud).Mean(run.First, run.Last);
        if (double.IsNaN(cloud)) return Even;
        var chance = LeadTimePrior.CloudBelow(cloud, night.Limits.Cloud.Stop, lead);
        // Cloud, rain and thunder fail together, so the least chance is taken, not the product.
        for (var cell = run.First; cell <= run.Last; cell++)
        {
            if (1 - weather.RainProbability[cell] < chance) chance = 1 - weather.RainProbability[cell];
            if (1 - weather.Thunder[cell] < chance) chance = 1 - weather.Thunder[cell];
        }

        return chance;
    }

    private static Probability? ByMembers(NightEvidence night)
    {
        var known = Tracks(night, night.Inputs.Weather.Members);
        if (known.Count < FewestMembers) return null;
        var passing = known.Count(track => Passes(night, track));
        return new Probability((double)passing / known.Count, ProbabilityBasis.EnsembleMembers, known.Count) { Usable = passing };
    }

    private static Probability? ByEarlierRuns(NightEvidence night, Run run, Severity worst)
    {
        var known = Tracks(night, night.Inputs.Weather.EarlierRuns);
        if (known.Count < FewestEarlierRuns || night.Inputs.Weather.Newest is null) return null;
        var passing = known.Count(track => Passes(night, track)) + (worst == Severity.Stop ? 0 : 1);
        var runs = known.Count + 1;
        var prior = ByPrior(night, run, worst).Value;
        return new Probability((passing + PriorRuns * prior) / (runs + PriorRuns), ProbabilityBasis.LaggedRuns, runs) { Usable = passing };
    }

    private static Probability ByPrior(NightEvidence night, Run run, Severity worst)
    {
        if (night.Inputs.Weather.Newest is not { } forecast)
            return new Probability(Even, ProbabilityBasis.LeadTimePrior, 0) { IsBlind = true };
        var chance = Prior(night, night.Weather, run, forecast.IssuedAt ?? forecast.RetrievedAt);
        if (worst == Severity.Stop)
        {
            // A forecast stop comes true at least as often as the forecast is about right.
            var lead = (run.Span.Start - (forecast.IssuedAt ?? forecast.RetrievedAt)).TotalHours;
            chance = Math.Min(chance, 1 - LeadTimePrior.SmallErrorShare(lead));
        }

        return new Probability(chance, ProbabilityBasis.LeadTimePrior, 0);
    }

    private static List<WeatherTrack> Tracks(NightEvidence night, IReadOnlyList<ForecastSeries> all)
    {
        var tracks = new List<WeatherTrack>(all.Count);
        if (all.Count == 0) return tracks;
        var windows = night.Candidates.Select(window => night.Grid.Cells(window)).Where(cells => cells.First <= cells.Last).ToArray();
        var (first, last) = (windows.Min(cells => cells.First), windows.Max(cells => cells.Last));
        foreach (var series in all)
        {
            var track = WeatherTrack.Deciding(series, night.Grid, first, last);
            if (Array.Exists(windows, cells => Covers(track, cells))) tracks.Add(track.CompletedBy(night.Weather));
        }

        return tracks;
    }

    private static bool Covers(WeatherTrack track, (int First, int Last) cells)
    {
        for (var cell = cells.First; cell <= cells.Last; cell++)
        {
            if (double.IsNaN(track.Cloud[cell])) return false;
        }

        return true;
    }

    private static bool Passes(NightEvidence night, WeatherTrack track) => RunChoice.IsUsable(night with { Weather = track });
}

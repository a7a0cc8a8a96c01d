using NightWatch.Planning.Chance;
using NightWatch.Planning.Conditions;
using NightWatch.Planning.Verification;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Planning.Verdicts;

/// <summary>
/// How likely the night is usable with everything done that must be done: by a model over the newest forecast, its members and the runs
/// before it.
/// </summary>
/// <remarks>
/// Every run goes through the same evaluation as the newest; a quantity that it lacks altogether is taken from the newest. Kit, frame and
/// sky are certain: they are in the plan and its needs, not here.
/// </remarks>
internal static class UsableChance
{
    /// <summary>Fewer members say too little of a distribution (engineering choice).</summary>
    public const int FewestMembers = 5;

    /// <summary>Without any knowledge of the weather: even chances.</summary>
    private const double Even = 0.5;

    /// <param name="night">The newest forecast's evidence.</param>
    /// <param name="second">What a second feed says; null: nothing. It is never heard for a greater chance.</param>
    /// <param name="skyMin">Minutes of good frames that the sky alone allows.</param>
    public static Probability Of(NightEvidence night, SecondOpinion? second, double skyMin)
    {
        var weather = night.Inputs.Weather;
        if (weather.Newest is not { } newest || NightFigures.Of(night, night.Weather) is not { } figures)
            return new Probability(Even, ProbabilityBasis.LeadTimePrior, 0) { IsBlind = true };

        var members = Runs(night, weather.Members, newest);
        var others = members.Count >= FewestMembers ? members : Runs(night, weather.EarlierRuns, newest);
        var basis = others.Count == 0 ? ProbabilityBasis.LeadTimePrior
            : others == members ? ProbabilityBasis.EnsembleMembers
            : ProbabilityBasis.LaggedRuns;
        var known = ChanceFigures.Of(figures, others, night.Limits.UsableRunMin, skyMin);
        var (chances, lead) = (night.Inputs.Chances, Lead(night));
        var learnt = chances.Find(new ChanceKey(newest.FeedId, lead));
        var chance = chances.Of(newest.FeedId, lead, night.Watch.Site.Id).Of(known);
        var found = new Probability(Lowered(chance, second), basis, others.Count + 1)
        {
            Usable = others.Append(new AgedForecast(figures, 0)).Count(one => one.Figures.UsableMin >= night.Limits.UsableRunMin),
            IsLowered = second is { Differs: true } && second.Chance < chance,
            CalibrationVersion = learnt?.Version ?? 0,
            Figures = known,
        };
        return learnt is { IsUsed: true }
            ? found with { CalibratedBy = learnt.Learning.Nights, Uncalibrated = Lowered(chances.BeforeLearning(lead).Of(known), second) }
            : found;
    }

    /// <summary>The chance by one run alone of a feed that does not decide, and so is not learnt of: by the prior.</summary>
    public static double OfOther(NightEvidence night, ForecastFigures run, double skyMin) =>
        night.Inputs.Chances.BeforeLearning(Lead(night)).Of(ChanceFigures.Of(run, [], night.Limits.UsableRunMin, skyMin));

    private static double Lowered(double chance, SecondOpinion? second) =>
        second is not null && second.Chance < chance ? (chance + second.Chance) / 2 : chance;

    private static int Lead(NightEvidence night) => LeadNights.Of(night.Inputs.Now, night.Zone, night.Inputs.Night);

    /// <summary>How much older than the newest a run is, hours, 0 or more.</summary>
    public static double AgeHours(ForecastSeries newest, ForecastSeries run) => Math.Max(0, (Issued(newest) - Issued(run)).TotalHours);

    private static List<AgedForecast> Runs(NightEvidence night, IReadOnlyList<ForecastSeries> all, ForecastSeries newest)
    {
        var runs = new List<AgedForecast>(all.Count);
        if (all.Count == 0) return runs;
        var windows = night.Candidates.Select(window => night.Grid.Cells(window)).Where(cells => cells.First <= cells.Last).ToArray();
        var (first, last) = (windows.Min(cells => cells.First), windows.Max(cells => cells.Last));
        foreach (var series in all)
        {
            var track = WeatherTrack.Deciding(series, night.Grid, first, last).CompletedBy(night.Weather);
            if (NightFigures.Of(night, track) is { } figures) runs.Add(new AgedForecast(figures, AgeHours(newest, series)));
        }

        return runs;
    }

    private static Instant Issued(ForecastSeries series) => series.IssuedAt ?? series.RetrievedAt;
}

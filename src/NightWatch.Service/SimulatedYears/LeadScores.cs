using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Verification;
using NightWatch.Planning.Verification.Calibrating;
using NodaTime;

namespace NightWatch.Service.SimulatedYears;

/// <summary>How probabilities did.</summary>
/// <param name="Brier">The score and its parts.</param>
/// <param name="Reliability">What came when about so much was said.</param>
internal sealed record ProbabilityScores(BrierScore Brier, IReadOnlyList<ReliabilityBin> Reliability)
{
    public static ProbabilityScores Of(IReadOnlyList<ForecastPair> pairs) => new(BrierScore.Of(pairs), ReliabilityDiagram.Of(pairs));
}

/// <summary>How calls and probabilities did so many nights ahead.</summary>
/// <param name="LeadNights">Nights ahead; 0 is the last look at home on the day.</param>
/// <param name="Calls">Go or marginal is a call.</param>
/// <param name="Raw">As computed.</param>
/// <param name="Calibrated">By parameters learnt on other fortnights; as computed where calibration is off.</param>
/// <param name="Calibration">What the whole record teaches, and the proof.</param>
/// <param name="SkillOnClimate">Brier skill against each site's own share of usable nights, which it knows from the very same nights.</param>
/// <param name="SkillOnPersistence">Brier skill against "as on the last night that was over".</param>
/// <param name="RankedProbability">Mean ranked probability score over no-go, marginal, go.</param>
/// <param name="RankedSkill">Its skill against the classes' own shares.</param>
internal sealed record LeadScores(
    int LeadNights,
    ContingencyTable Calls,
    ProbabilityScores Raw,
    ProbabilityScores Calibrated,
    Calibration Calibration,
    double? SkillOnClimate,
    double? SkillOnPersistence,
    double RankedProbability,
    double? RankedSkill)
{
    private const string FeedId = "fake";

    /// <param name="lead">Nights ahead.</param>
    /// <param name="nights">At least one.</param>
    /// <param name="end">When the years are over and the calibration is learnt.</param>
    public static LeadScores Of(int lead, IReadOnlyList<SimulatedNight> nights, Instant end)
    {
        var dated = nights.Select(night => new DatedPair(night.Night, new ForecastPair(night.Looks[lead].Probability, night.Usable))).ToList();
        var raw = dated.ConvertAll(pair => pair.Pair);
        var calibration = Calibration.Learn(Calibration.None(new CalibrationKey(FeedId, lead), end), dated, end);
        var calibrated = HeldOut(calibration, dated);
        var (ranked, rankedClimate) = Ranked(lead, nights);
        return new LeadScores(
            lead,
            ContingencyTable.Of(nights.Select(night => (night.Looks[lead].Class != VerdictClass.NoGo, night.Usable))),
            ProbabilityScores.Of(raw),
            ProbabilityScores.Of(calibrated),
            calibration,
            OnClimate(nights, raw),
            OnPersistence(lead, nights),
            ranked,
            Skill.Of(ranked, rankedClimate));
    }

    /// <summary>Each pair by what the other fortnights teach, in the way that was found the best.</summary>
    private static List<ForecastPair> HeldOut(Calibration calibration, List<DatedPair> pairs)
    {
        var said = calibration.Map switch
        {
            CalibrationMap.Logistic => CrossValidation.Of(pairs, LogisticFit.Of).Calibrated,
            CalibrationMap.Isotonic => CrossValidation.Of(pairs, IsotonicFit.Of).Calibrated,
            _ => [.. pairs.Select(pair => pair.Pair.Probability)],
        };
        return [.. pairs.Select((pair, i) => pair.Pair with { Probability = said[i] })];
    }

    private static double? OnClimate(IReadOnlyList<SimulatedNight> nights, List<ForecastPair> raw)
    {
        var shares = nights.GroupBy(night => night.Site).ToDictionary(site => site.Key, site => site.Average(night => night.Usable ? 1.0 : 0));
        return Skill.Of(
            raw.Average(pair => pair.SquaredError),
            nights.Average(night => new ForecastPair(shares[night.Site], night.Usable).SquaredError));
    }

    private static double? OnPersistence(int lead, IReadOnlyList<SimulatedNight> nights)
    {
        var known = nights.Where(night => night.CameBefore[lead] is not null).ToList();
        if (known.Count == 0) return null;
        return Skill.Of(
            known.Average(night => new ForecastPair(night.Looks[lead].Probability, night.Usable).SquaredError),
            known.Average(night => new ForecastPair(night.CameBefore[lead]!.Value ? 1 : 0, night.Usable).SquaredError));
    }

    /// <summary>The service gives one probability, that of a usable night; go and marginal share it as they do over the whole run.</summary>
    private static (double Score, double Climate) Ranked(int lead, IReadOnlyList<SimulatedNight> nights)
    {
        double Share(VerdictClass came) => nights.Count(night => night.Came == came) / (double)nights.Count;
        var (marginal, go) = (Share(VerdictClass.Marginal), Share(VerdictClass.Go));
        var goOfUsable = marginal + go > 0 ? go / (marginal + go) : 0;
        var score = nights.Average(night => night.Looks[lead].Probability is var p
            ? RankedProbabilityScore.Of([1 - p, p * (1 - goOfUsable), p * goOfUsable], (int)night.Came)
            : 0);
        return (score, nights.Average(night => RankedProbabilityScore.Of([1 - marginal - go, marginal, go], (int)night.Came)));
    }
}

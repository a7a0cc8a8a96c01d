using NightWatch.Planning.Camera;
using NightWatch.Planning.Conditions;
using NightWatch.Planning.Dew;
using NightWatch.Planning.Ground;
using NightWatch.Planning.Hazards;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Power;
using NightWatch.Planning.Reasons;
using NightWatch.Planning.SkyBrightness;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Verification;
using NightWatch.Planning.Watches;
using NodaTime;

namespace NightWatch.Words.Tests;

/// <summary>Pairs of statements about one quantity that a plan makes in several places, and where they do not agree.</summary>
internal static class Contradictions
{
    /// <summary>The steps of a plan are rounded to five places.</summary>
    private const double Rounding = 1e-5;

    /// <summary>Every pair of a plan that does not agree, each with both of its statements.</summary>
    public static IEnumerable<string> In(NightPlan plan) =>
        Cloud(plan)
            .Concat(Dew(plan))
            .Concat(Wind(plan))
            .Concat(Thunder(plan))
            .Concat(Moon(plan))
            .Concat(Minutes(plan))
            .Concat(VerdictAndChance(plan))
            .Concat(Needs(plan))
            .Concat(Kit(plan))
            .Concat(OutThere(plan));

    private static IEnumerable<string> Cloud(NightPlan plan)
    {
        if (Found<CloudMean>(plan) is not { } said) yield break;
        var summary = English.Instance.Cloud(plan.Summary, Speech(plan));
        if (plan.Summary.CloudMean != said.Mean || plan.Summary.CloudMost != said.Most)
            yield return $"cloud: {Said(plan, said)} / {summary}";
        var steps = InRun(plan).Select(step => step.Cloud).OfType<double>().ToList();
        if (!Same(steps.Max(), said.Most) || !Same(steps.Average(), said.Mean))
            yield return $"cloud by step: {Said(plan, said)} / {steps.Average()} to {steps.Max()}";
        // A frame counts in full up to the caution: no such sky is called cloudy, and none past the stop clear.
        if (said.UnknownShare == 0 && said.Severity == Severity.Stop && said.Most < said.Limits.Caution)
            yield return $"cloud: a stop below its caution, {Said(plan, said)}";
    }

    private static IEnumerable<string> Dew(NightPlan plan)
    {
        if (plan.Verdict.Run is null || plan.Verdict.Reasons.FirstOrDefault(reason => reason.Factor == Factor.Dew) is not { } found)
            yield break;
        var (reason, summary) = (Said(plan, found), English.Instance.Dew(plan.Summary, Speech(plan)));
        var onset = found switch
        {
            DewOnBareLens d => d.Onset,
            DewHeldOff d => d.Onset,
            DewAfterHeater d => d.Onset,
            DewThroughHeater d => (Instant?)d.Onset,
            _ => null,
        };
        if (found is not DewNotKnown && plan.Summary.DewOnset != onset) yield return $"dew onset: {reason} / {summary}";
        if (found is LensStaysDry dry)
        {
            if (reason.Contains("not expected", StringComparison.Ordinal) && !summary.StartsWith("No dew", StringComparison.Ordinal))
                yield return $"dew: {reason} / {summary}";
            if (plan.Summary.LeastDewMarginK != dry.BareMarginK) yield return $"dew margin: {reason} / {summary}";
        }

        if (found is DewThroughHeater through && plan.Summary.HeatedOnset != through.Until)
            yield return $"heated dew: {reason} / {summary}";
        if (found is DewHeldOff && summary.Contains("until", StringComparison.Ordinal)) yield return $"held off: {reason} / {summary}";
        if (
            found is DewAfterHeater { IsOnPacks: true }
            && plan.Packing.OfType<PackItem.Batteries>().Single().MoreWh is null
            && plan.Power is not { ColdShare: 0 })
            yield return $"heater on packs: {reason}";
        if (found is DewAfterHeater or DewThroughHeater && plan.Lens is { HeaterSuffices: not false })
            yield return $"heater suffices: {reason} / {plan.Lens}";
        if (found is DewHeldOff && plan.Lens is { HeaterSuffices: false }) yield return $"heater does not suffice: {reason} / {plan.Lens}";
        var heater = plan.Packing.OfType<PackItem.Heater>().FirstOrDefault();
        if (found is DewNotKnown != (plan.Summary.LeastDewMarginK is null)) yield return $"dew not known: {reason} / {summary}";
        if (found is DewAfterHeater { IsOnPacks: false } && heater?.MoreWh is null) yield return $"heater's battery: {reason} / {heater}";
        if (found is DewHeldOff && heater?.MoreWh is not null) yield return $"heater's battery: {reason} / {heater}";
        if (found is DewOnBareLens && !plan.Packing.OfType<PackItem.HandWarmer>().Any()) yield return $"hand warmer: {reason}";
        if (found is LensStaysDry && plan.Packing.OfType<PackItem.HandWarmer>().Any()) yield return $"hand warmer: {reason}";
    }

    private static IEnumerable<string> Wind(NightPlan plan)
    {
        if (Found<Gusts>(plan) is not { } said) yield break;
        var most = InRun(plan).Max(step => step.GustMps ?? 0);
        if (!Same(most, said.GustMps)) yield return $"gusts by step: {Said(plan, said)} / {most}";
        if (plan.Packing.OfType<PackItem.Weight>().FirstOrDefault() is { } weight && weight.GustMps != said.GustMps)
            yield return $"gusts: {Said(plan, said)} / {weight}";
        if (plan.Cautions.OfType<Caution.Gusts>().FirstOrDefault() is not { } caution) yield break;
        var (hazard, reason) = (Said(plan, caution), Said(plan, said));
        if (caution.GustMps < said.GustMps) yield return $"gusts: {hazard} / {reason}";
        if (Figure(caution.GustMps, plan) != Figure(said.GustMps, plan) && !hazard.Contains("leaving home", StringComparison.Ordinal))
            yield return $"gusts: {hazard} / {reason}";
    }

    private static IEnumerable<string> Thunder(NightPlan plan)
    {
        if (Found<ThunderChance>(plan) is not { } said) yield break;
        if (plan.Cautions.OfType<Caution.ThunderNotTold>().Any())
            yield return $"thunder: {Said(plan, said)} / {Said(plan, new Caution.ThunderNotTold())}";
        if (plan.Cautions.OfType<Caution.Thunder>().FirstOrDefault() is not { } caution)
        {
            if (said.Severity != Severity.Ok) yield return $"thunder without its caution: {Said(plan, said)}";
            yield break;
        }

        var (hazard, reason) = (Said(plan, caution), Said(plan, said));
        if (caution.Probability < said.Probability) yield return $"thunder: {hazard} / {reason}";
        if (Percent(caution.Probability) != Percent(said.Probability) && !hazard.Contains("leaving home", StringComparison.Ordinal))
            yield return $"thunder: {hazard} / {reason}";
    }

    private static IEnumerable<string> Moon(NightPlan plan)
    {
        if (Found<MoonLight>(plan) is not { } said) yield break;
        var (reason, summary) = (Said(plan, said), English.Instance.Moon(plan.Summary, Speech(plan)));
        if (said.LitFraction != plan.Summary.MoonIlluminatedFraction) yield return $"Moon: {reason} / {summary}";
        if (plan.Summary.MoonBrighteningMag is { } most && most != said.BrighteningMag) yield return $"Moon: {reason} / {summary}";
        if (reason.Contains("up to 0.0 mag", StringComparison.Ordinal) || reason.Contains("up to 0 mag", StringComparison.Ordinal))
            yield return $"Moon: {reason} / {summary}";
        if (said.BrighteningMag <= 0 && said.Severity != Severity.Ok) yield return $"Moon: {said.Severity}, {reason}";
    }

    private static IEnumerable<string> Minutes(NightPlan plan)
    {
        var verdict = plan.Verdict;
        if (verdict.Run is not { } run || Found<RunLength>(plan) is not { } said) yield break;
        // Where nothing must be done first the plan's own minutes are told.
        var told =
            verdict.Probability.Basis == ProbabilityBasis.SkyAlone || verdict.Needs.Count > 0
                ? verdict.UsableMin
                : verdict.ForecastMin ?? verdict.UsableMin;
        if (said.Run != run || said.UsableMin != told) yield return $"minutes: {Said(plan, said)} / {verdict.UsableMin} in {run}";
        if (verdict.UsableMin > run.Duration.TotalMinutes + 1e-3)
            yield return $"minutes: {verdict.UsableMin} of {run.Duration.TotalMinutes}";
        if (verdict.ForecastMin > verdict.UsableMin + 1e-3)
            yield return $"minutes: forecast {verdict.ForecastMin}, with needs done {verdict.UsableMin}";
        if (said.Severity == Severity.Ok && said.UsableMin < said.LeastMin) yield return $"minutes: ok, {Said(plan, said)}";
        // Good frames are not promised where every cell of the run is overcast.
        var isOpen = InRun(plan).Any(step => step.Worth is not { Clear: 0 });
        if (!isOpen && verdict.Probability.Basis != ProbabilityBasis.SkyAlone && verdict.UsableMin > 0)
            yield return $"minutes: {Said(plan, said)} / {Said(plan, Found<CloudMean>(plan))}";
        if (verdict.Probability is { Usable: 0, Count: > 0 } && verdict.ForecastMin >= said.LeastMin)
            yield return $"minutes: {Said(plan, said)} / {English.Instance.Of(verdict.Probability)}";
    }

    private static IEnumerable<string> VerdictAndChance(NightPlan plan)
    {
        var verdict = plan.Verdict;
        var told = $"{verdict.Class}, {English.Instance.Likely(verdict.Probability)}, {Said(plan, verdict.Deciding)}";
        if (Found<UsableNight>(plan) is { } chance && chance.Probability != verdict.Probability.Value)
            yield return $"chance: {told} / {Said(plan, chance)}";
        var worst = verdict.Reasons.Max(reason => reason.Severity);
        if (verdict.Deciding.Severity != worst) yield return $"deciding: {told}";
        var trade = verdict.TradeOff!.Value;
        switch (verdict.Class)
        {
            case VerdictClass.Go:
                if (worst == Severity.Stop || verdict.Needs.Count > 0 || verdict.Probability.Value < trade.GoFrom - TradeOff.Hysteresis)
                    yield return $"go: {told}";
                break;
            case VerdictClass.Marginal:
                if (worst != Severity.Caution) yield return $"marginal: {told}";
                if (verdict.Probability.Value < trade.PaysFrom - TradeOff.Hysteresis) yield return $"marginal: {told}";
                break;
            default:
                if (worst != Severity.Stop) yield return $"no-go: {told}";
                if (
                    verdict.Probability.Value >= trade.PaysFrom + TradeOff.Hysteresis
                    && !verdict.Deciding.IsHazard
                    && verdict.Deciding.Factor != Factor.Ground)
                    yield return $"no-go: {told}";
                break;
        }

        if (
            verdict.Probability.Basis == ProbabilityBasis.SkyAlone
            && (verdict.Probability.Value != 0 || verdict.Class != VerdictClass.NoGo))
            yield return $"sky alone: {told}";
        foreach (var said in verdict.Reasons.GroupBy(reason => reason.Factor).Where(group => group.Count() > 1))
            yield return $"twice: {string.Join(" / ", said.Select(reason => Said(plan, reason)))}";
    }

    private static IEnumerable<string> Needs(NightPlan plan)
    {
        foreach (var need in plan.Verdict.Needs)
        {
            if (plan.Verdict.Reasons.FirstOrDefault(reason => reason.Factor == need.Factor) is not { } found)
                yield return $"need without reason: {need}";
            else if (found.Severity == Severity.Ok || found.Mend != need.Mend)
                yield return $"need: {need} / {found.Severity} {Said(plan, found)}";
        }

        if (plan.Verdict.Run is null) yield break;
        foreach (
            var reason in plan.Verdict.Reasons.Where(reason =>
                reason is { Severity: > Severity.Ok, IsUnknown: false } && IsOfKit(reason.Factor)))
        {
            if (plan.Verdict.Needs.All(need => need.Factor != reason.Factor))
                yield return $"no need: {reason.Severity} {Said(plan, reason)}";
        }
    }

    private static IEnumerable<string> Kit(NightPlan plan)
    {
        var packs = plan.Packing.OfType<PackItem.Batteries>().FirstOrDefault();
        if (Found<PacksRunOut>(plan) is { } empty && packs?.MoreWh is null) yield return $"packs: {Said(plan, empty)} / {packs}";
        if (Found<PacksLast>(plan) is { } last && last.HasReserve != packs?.MoreWh is null)
            yield return $"packs: {Said(plan, last)} / {packs}";
        if (Found<PacksRunOut>(plan) is { Mend: Mend.Packs mend } && mend.Wh != packs?.MoreWh) yield return $"packs: {mend} / {packs}";
        if (Found<CardRoom>(plan) is { } cards)
        {
            if (cards.Full is null != plan.Packing.OfType<PackItem.Cards>().Single().MoreGb is null)
                yield return $"cards: {Said(plan, cards)}";
            if (cards.Shots != plan.Sequence?.Shots) yield return $"frames: {Said(plan, cards)} / {plan.Sequence}";
        }

        if (plan.Verdict.Reasons.OfType<SkyLevelHeld>().FirstOrDefault() is { } held && held.Most >= held.LimitHeld)
            yield return $"sky level: {Said(plan, held)}";
    }

    private static IEnumerable<string> OutThere(NightPlan plan)
    {
        var waterproofs = plan.Packing.OfType<PackItem.Waterproofs>().FirstOrDefault();
        if (Found<GroundWetness>(plan) is { } ground && ground.AtStart is GroundState.Wet or GroundState.Damp != waterproofs is not null)
            yield return $"ground: {Said(plan, ground)} / {waterproofs}";
        if (Found<RainAmount>(plan) is { } rain)
        {
            var most = InRun(plan).Max(step => step.RainMmPerH ?? 0);
            if (
                rain.MmPerH > most + Rounding
                || (
                    rain.Severity == Severity.Ok
                    && most >= plan.Watch.Limits.PrecipitationMmPerH
                    && rain.MmPerH < plan.Watch.Limits.PrecipitationMmPerH))
                yield return $"rain: {Said(plan, rain)} / {most}";
            if (plan.Cautions.OfType<Caution.Flood>().FirstOrDefault() is { } flood && flood.Mm < rain.MmPerH - 1e-6)
                yield return $"rain: {Said(plan, rain)} / {Said(plan, flood)}";
        }

        if (Found<RainChance>(plan) is { } chance && !Same(InRun(plan).Max(step => step.RainProbability ?? 0), chance.Probability))
            yield return $"rain chance: {Said(plan, chance)}";
    }

    private static bool IsOfKit(Factor factor) => factor is Factor.Frame or Factor.Power or Factor.Storage or Factor.SkyLevel or Factor.Dew;

    private static T? Found<T>(NightPlan plan) where T : Reason => plan.Verdict.Reasons.OfType<T>().FirstOrDefault();

    private static IEnumerable<ConditionStep> InRun(NightPlan plan) => plan.Verdict.Run is { } run
        ? plan.Conditions.Where(step => step.At > run.Start - Planning.Grid.NightGrid.Step && step.At < run.End)
        : [];

    private static bool Same(double step, double said) => Math.Abs(step - said) <= Rounding;

    private static string Percent(double share) => $"{Math.Round(100 * share):0}";

    private static string Figure(double mps, NightPlan plan) => Speech(plan).Units.Figure(mps, Unit.MetresPerSecond);

    private static string Said(NightPlan plan, Reason? reason) => reason is null ? "nothing" : English.Instance.Of(reason, Speech(plan));

    private static string Said(NightPlan plan, Caution caution) => English.Instance.Of(caution, Speech(plan));

    private static Speech Speech(NightPlan plan) => new(English.Instance, UnitSystem.Metric, plan.Watch.Site.Zone);
}

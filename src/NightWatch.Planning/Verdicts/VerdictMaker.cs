using NightWatch.Planning.Grid;
using NightWatch.Planning.Reasons;
using NightWatch.Planning.Verification;

namespace NightWatch.Planning.Verdicts;

/// <summary>The verdict by the chance and what it is worth to the reader, and the reasons in the order they are told.</summary>
internal static class VerdictMaker
{
    /// <summary>For a night with a run.</summary>
    public static Verdict Of(NightEvidence night, ShootingPlan plan)
    {
        var worth = PlanWorth.Of(night, plan);
        var least = night.Limits.UsableRunMin;
        var skyMin = RunChoice.Best(night, night.Dark)?.UsableMin ?? 0;
        var isSkyAlone = skyMin < least;
        var second = isSkyAlone || night.Inputs.HasCome ? null : SecondOpinion.Of(night, plan.Run, skyMin);
        var found = Judges
            .All.Select(judge => judge(night, plan))
            .Append(DisagreementJudge.Of(second, night, plan.Run))
            .OfType<Reason>()
            .ToList();
        var needs = isSkyAlone ? [] : NeedsOf(found, worth);
        // Where nothing must be done first the plan's own minutes are told, as in the headline.
        var minutes = isSkyAlone ? skyMin : needs.Length > 0 ? worth.UsableMin : worth.ForecastMin ?? worth.UsableMin;
        found.Add(LengthJudge.Of(plan.Run.Span, minutes, isSkyAlone, needs.Length > 0, night.Limits));
        var chance = isSkyAlone ? SkyAlone
            : night.Inputs.HasCome ? Came(worth.WithNeedsDoneMin >= least && RunChoice.Best(night, night.Worth)?.UsableMin >= least)
            : UsableChance.Of(night, second, skyMin);
        var tradeOff = new TradeOff(night.Watch.Outing.DrivesPerLostNight);
        var @class = ClassOf(night, plan.Run, found, needs, chance, tradeOff);
        var isAgainstChance = @class == VerdictClass.NoGo && ByChance(night, chance, tradeOff) != VerdictClass.NoGo;
        return new Verdict
        {
            Class = @class,
            Run = plan.Run.Span,
            Probability = chance,
            Reasons = Ordered(Weighed(found, needs, @class, isAgainstChance).Concat(ChanceJudge.Of(chance, tradeOff, @class)), needs),
            ForecastMin = worth.ForecastMin,
            UsableMin = isSkyAlone ? skyMin : worth.UsableMin,
            Needs = needs,
            HoldsOnceDone = @class == VerdictClass.Marginal && needs.Length > 0 && CanCarry(night, plan.Run, found)
                && ByChance(night, chance, tradeOff) == VerdictClass.Go,
            TradeOff = tradeOff,
        };
    }

    /// <summary>For a night without dark subject time.</summary>
    public static Verdict WithoutRun(NightEvidence night) => new()
    {
        Class = VerdictClass.NoGo,
        Run = null,
        Probability = SkyAlone,
        Reasons = Ordered(MissingSky.Reasons(night), []),
        ForecastMin = 0,
        TradeOff = new TradeOff(night.Watch.Outing.DrivesPerLostNight),
    };

    private static Probability SkyAlone { get; } = new(0, ProbabilityBasis.SkyAlone, 0);

    private static Probability Came(bool usable) => new(usable ? 1 : 0, ProbabilityBasis.Came, 0);

    private static Need[] NeedsOf(IEnumerable<Reason> found, PlanWorth worth) =>
    [
        .. from reason in found
           where reason.Mend is not null
           let lost = worth.LostMin(reason.Factor)
           where lost is { } minutes && worth.IsNeed(minutes)
           orderby lost descending
           select new Need(reason.Factor, reason.Mend!, lost!.Value),
    ];

    private static VerdictClass ClassOf(
        NightEvidence night, Run run, List<Reason> found, Need[] needs, Probability chance, TradeOff tradeOff)
    {
        var byChance = ByChance(night, chance, tradeOff);
        // Of a night that has come only what was seen counts, not what was likely.
        if (night.Inputs.HasCome) return byChance;
        if (found.Exists(reason => reason.Severity == Severity.Stop && IsNoMatterOfChance(reason))) return VerdictClass.NoGo;
        if (byChance != VerdictClass.Go) return byChance;
        return CanCarry(night, run, found) && needs.Length == 0 ? VerdictClass.Go : VerdictClass.Marginal;
    }

    /// <summary>The forecast can carry a go: it is fresh and fine enough, and nothing is unknown that nothing rules out.</summary>
    private static bool CanCarry(NightEvidence night, Run run, List<Reason> found) =>
        IsWeatherKnown(night, run)
        && !found.Exists(reason =>
            reason.Severity > Severity.Ok && (reason.Factor == Factor.Forecast || reason.IsUnknown) && reason.Factor != Factor.Hazard);

    /// <summary>Rain and wind are known for all of a run: what is not known there may be worse than what is.</summary>
    private static bool IsWeatherKnown(NightEvidence night, Run run)
    {
        for (var cell = run.First; cell <= run.Last; cell++)
        {
            if (
                double.IsNaN(night.Weather.Rain[cell])
                || (double.IsNaN(night.Weather.GustMps[cell]) && double.IsNaN(night.Weather.WindMps[cell])))
                return false;
        }

        return true;
    }

    private static VerdictClass ByChance(NightEvidence night, Probability chance, TradeOff tradeOff) =>
        tradeOff.Of(chance.Value, night.Inputs.HasCome || chance.Basis == ProbabilityBasis.SkyAlone ? null : night.Inputs.LastTold);

    /// <summary>People first; and ground that must be dry.</summary>
    private static bool IsNoMatterOfChance(Reason reason) => reason.IsHazard || reason.Factor == Factor.Ground;

    /// <summary>
    /// The kit's findings weigh by whether they are needs; the newest forecast's stop is a doubt where the chance, which knows more, says
    /// that the night may work, also of a night that something else forbids.
    /// </summary>
    private static IEnumerable<Reason> Weighed(IEnumerable<Reason> found, Need[] needs, VerdictClass said, bool isAgainstChance)
    {
        foreach (var reason in found)
        {
            var severity = reason.Factor switch
            {
                Factor.Frame or Factor.Power or Factor.Storage or Factor.SkyLevel or Factor.Dew when !reason.IsUnknown => Array.Exists(
                    needs, need => need.Factor == reason.Factor)
                    ? Severity.Caution
                    : Severity.Ok,
                _ when reason.Severity == Severity.Stop
                        && (said != VerdictClass.NoGo || (isAgainstChance && !IsNoMatterOfChance(reason))) => Severity.Caution,
                _ => reason.Severity,
            };
            yield return severity == reason.Severity ? reason : reason with { Severity = severity };
        }
    }

    // Within one severity what must be done first stands first, as it is the reader's to do.
    private static IReadOnlyList<Reason> Ordered(IEnumerable<Reason> reasons, Need[] needs) =>
    [
        .. reasons.OrderByDescending(reason => reason.Severity)
            .ThenByDescending(reason => reason.IsHazard)
            .ThenByDescending(reason => Array.Exists(needs, need => need.Factor == reason.Factor))
            // Where all is well it is the chance that decided.
            .ThenByDescending(reason => reason is { Factor: Factor.Chance, Severity: Severity.Ok })
            // That the sky leaves too little is what follows; what takes it comes first.
            .ThenBy(reason => reason.Factor == Factor.Length)
            .ThenBy(reason => reason.Factor),
    ];
}

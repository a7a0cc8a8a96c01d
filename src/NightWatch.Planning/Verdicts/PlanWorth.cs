using NightWatch.Planning.Reasons;
using NightWatch.Planning.Worth;
using NodaTime;

namespace NightWatch.Planning.Verdicts;

/// <summary>What the frames of a plan are worth, by cell and altogether.</summary>
internal sealed record PlanWorth
{
    /// <summary>Smaller losses than this share of the usable minutes are told, and are no need.</summary>
    private const double NoMatter = 0.1;

    private readonly NightEvidence night;
    private readonly ShootingPlan plan;
    private readonly double[] mendable; // worth with all that can be mended done

    private PlanWorth(NightEvidence night, ShootingPlan plan)
    {
        (this.night, this.plan) = (night, plan);
        // Without any weather the sky's own worth stands for it: what the kit takes is the same under every weather.
        var isWorthless = Minutes(night.Worth) <= 0;
        var sound = isWorthless ? night.Dark : night.Worth;
        var kit = plan.Kit;
        // A camera that stands still stands where it does best: what it loses there no preparation brings back.
        mendable = plan.Framing is { IsProgrammed: false } ? Times(sound, kit.Framed) : sound;
        if (Minutes(mendable) < night.Limits.UsableRunMin) mendable = sound;
        WithNeedsDoneMin = Minutes(mendable);
        var isKnown = IsWeatherKnown();
        UsableMin = isWorthless && isKnown ? 0 : WithNeedsDoneMin;
        ForecastMin = isKnown ? Minutes(Times(night.Worth, kit.Framed, kit.LensClear, kit.Powered, kit.Stored, kit.Exposed)) : null;
    }

    /// <summary>
    /// Minutes of good frames with everything done that can be done, by the newest forecast; by the sky alone where that leaves none.
    /// </summary>
    public double WithNeedsDoneMin { get; }

    /// <summary>The same by the newest forecast, also where that leaves none; by the sky alone where the weather is not known.</summary>
    public double UsableMin { get; }

    /// <summary>
    /// Minutes of good frames of the plan as it stands under the newest forecast; null: the weather of the run is not known.
    /// </summary>
    public double? ForecastMin { get; }

    /// <summary>Works out a plan.</summary>
    public static PlanWorth Of(NightEvidence night, ShootingPlan plan) => new(night, plan);

    /// <summary>What a factor of the kit takes alone, minutes; null: it is none of the kit's.</summary>
    public double? LostMin(Factor factor) =>
        ShareOf(factor) is { } share ? Math.Max(0, WithNeedsDoneMin - Minutes(Times(mendable, share))) : null;

    /// <summary>Whether a loss must be mended for the plan to hold.</summary>
    /// <param name="lostMin">Of one factor.</param>
    public bool IsNeed(double lostMin) =>
        lostMin > 0 && (lostMin > WithNeedsDoneMin * NoMatter || WithNeedsDoneMin - lostMin < night.Limits.UsableRunMin);

    private double[]? ShareOf(Factor factor) => factor switch
    {
        Factor.Frame => plan.Kit.Framed,
        Factor.Dew => plan.Kit.LensClear,
        Factor.Power => plan.Kit.Powered,
        Factor.Storage => plan.Kit.Stored,
        Factor.SkyLevel => plan.Kit.Exposed,
        _ => null,
    };

    private bool IsWeatherKnown()
    {
        for (var cell = plan.Run.First; cell <= plan.Run.Last; cell++)
        {
            if (!double.IsNaN(night.Worth[cell])) return true;
        }

        return false;
    }

    private double Minutes(double[] worth) =>
        BestStretch.Of(worth, night.Grid, [plan.Run.Span], Duration.FromMinutes(night.Limits.LongestGapMin))?.UsableMin ?? 0;

    private static double[] Times(params ReadOnlySpan<double[]> shares)
    {
        var product = (double[])shares[0].Clone();
        foreach (var share in shares[1..])
        {
            for (var cell = 0; cell < product.Length; cell++) product[cell] *= share[cell];
        }

        return product;
    }
}

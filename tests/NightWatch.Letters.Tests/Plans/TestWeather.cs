using NightWatch.Planning.Conditions;
using NightWatch.Planning.Dew;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Reasons;
using NightWatch.Planning.SkyBrightness;
using NightWatch.Planning.Verdicts;
using NodaTime;

namespace NightWatch.Letters.Tests.Plans;

/// <summary>Invented weather that goes with a class: a clear night, one with a veil and dew, one under a front.</summary>
internal sealed record TestWeather(VerdictClass Class, double Probability, double CloudMean, double CloudMost)
{
    public static TestWeather Of(VerdictClass verdict) => verdict switch
    {
        VerdictClass.Go => new(verdict, 0.82, 0.08, 0.21),
        VerdictClass.Marginal => new(verdict, 0.55, 0.31, 0.52),
        _ => new(verdict, 0.12, 0.78, 0.97),
    };

    public ConditionStep On(ConditionStep step, int index, bool known)
    {
        if (!known) return step;
        var wave = 0.5 + 0.5 * Math.Sin(index / 14.0);
        var cloud = Math.Clamp(CloudMean * 0.5 + wave * (CloudMost - CloudMean * 0.5) * 0.8, 0, 1);
        var air = 15.5 - index * 0.055;
        return step with
        {
            Cloud = cloud,
            LowCloud = Class == VerdictClass.NoGo ? cloud * 0.7 : 0.02,
            MediumCloud = cloud * 0.3,
            HighCloud = cloud,
            AirC = air,
            DewPointC = 7.6,
            WindMps = 2.5,
            GustMps = 5.4,
            LensC = air - 1.1,
            LensDewMarginK = air - 1.1 - 7.6 - (Class == VerdictClass.Go ? 0 : 2.0),
            SkyMag = step.SunAltitudeDeg < -18 ? 21.6 : 21.6 + (step.SunAltitudeDeg + 18) * -0.35,
            SkyShare = 0.14,
        };
    }

    public IReadOnlyList<Reason> Reasons(Interval run)
    {
        var (isGo, isNoGo) = (Class == VerdictClass.Go, Class == VerdictClass.NoGo);
        Reason[] all =
        [
            Cloud(run),
            isNoGo
                ? new RainAmount(Severity.Stop, new Interval(run.Start, run.Start + Duration.FromHours(2)), 0.9, 0.1) { Mend = new Mend.DryFor(90) }
                : new RainAmount(Severity.Ok, null, 0, 0.1),
            isNoGo
                ? new ThunderChance(Severity.Stop, new Interval(run.Start, run.Start + Duration.FromHours(1)), 0.28, run.Start, new(0.10, 0.25)) { Mend = new Mend.ChanceBelow(0.10) }
                : new ThunderChance(Severity.Ok, null, 0.01, run.Start, new(0.10, 0.25)),
            new Gusts(Severity.Ok, null, 5.4, run.Start, new(9, 14)),
            isGo
                ? new LensStaysDry(null, 1.9, 1.9)
                : new DewOnBareLens(new Interval(run.Start + Duration.FromHours(2.6), run.End), -0.4, IsFrost: false, DewOnset(run)) { Mend = new Mend.Heater(3, HeaterOn(run)) },
            new MoonLight(Severity.Ok, run, 0.02, 0, run.Start, new(0.3, 1)),
            new RunLength(Severity.Ok, run, 90),
            new FogRuledOut(null, 2.5, 0.1),
        ];
        return [.. all.OrderByDescending(r => r.Severity).ThenBy(r => r.Factor)];
    }

    public NightSummary Summary(Interval run) => new()
    {
        CloudMean = CloudMean,
        CloudMost = CloudMost,
        LowCloudMean = Class == VerdictClass.NoGo ? 0.5 : 0.02,
        HighCloudMean = CloudMean,
        DewOnset = Class == VerdictClass.Go ? null : DewOnset(run),
        LeastDewMarginK = Class == VerdictClass.Go ? 1.9 : -0.4,
        HeaterOn = Class == VerdictClass.Go ? null : HeaterOn(run),
        MoonIlluminatedFraction = 0.02,
        MoonTurns = [],
        MoonIsUp = false,
        MoonBrighteningMag = 0,
    };

    private static Instant DewOnset(Interval run) => run.Start + Duration.FromMinutes(155);

    private static Instant HeaterOn(Interval run) => run.Start + Duration.FromMinutes(125);

    private Reason Cloud(Interval run)
    {
        var severity = Class switch { VerdictClass.Go => Severity.Ok, VerdictClass.Marginal => Severity.Caution, _ => Severity.Stop };
        return new CloudMean(severity, run, CloudMean, CloudMost, run.Start + Duration.FromMinutes(85), new(0.20, 0.45), 0)
        {
            Mend = Class switch
            {
                VerdictClass.Go => null,
                VerdictClass.Marginal => new Mend.CloudAtMost(0.20, 90),
                _ => new Mend.CloudBelow(0.45, 90),
            },
        };
    }
}

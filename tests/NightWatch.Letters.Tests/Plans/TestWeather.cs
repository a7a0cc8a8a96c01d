using NightWatch.Planning.Judging;
using NightWatch.Planning.Nights;
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
        Reason[] all =
        [
            Cloud(run),
            Class == VerdictClass.NoGo
                ? new Reason(Factor.Rain, Severity.Stop, new Interval(run.Start, run.Start + Duration.FromHours(2)), 0.9, 0.1, Unit.Millimetres, "Up to 0.9 mm of rain in an hour (limit 0.1 mm).")
                : new Reason(Factor.Rain, Severity.Ok, null, 0.0, 0.1, Unit.Millimetres, "No rain expected."),
            Class == VerdictClass.NoGo
                ? new Reason(Factor.Thunder, Severity.Stop, new Interval(run.Start, run.Start + Duration.FromHours(1)), 0.28, 0.25, Unit.Fraction, "Thunder probability up to 28 % (stop from 25 %).")
                : new Reason(Factor.Thunder, Severity.Ok, null, 0.01, 0.10, Unit.Fraction, "Thunder probability at most 1 %."),
            new Reason(Factor.Wind, Severity.Ok, null, 5.4, 9, Unit.MetresPerSecond, "Gusts up to 5.4 m/s (caution from 9 m/s)."),
            Class == VerdictClass.Go
                ? new Reason(Factor.Dew, Severity.Ok, null, 1.9, 0, Unit.Kelvin, "The lens stays at least 1.9 K above the dew point.", Source: "element energy balance")
                : new Reason(Factor.Dew, Severity.Caution, new Interval(run.Start + Duration.FromHours(2.6), run.End), -0.4, 0, Unit.Kelvin, "Dew on an unheated lens from 02:40.", "a heater of 3 W from 02:10"),
            new Reason(Factor.Moon, Severity.Ok, null, 0.0, 0.3, Unit.Magnitudes, "The Moon is down for the whole run."),
            new Reason(Factor.Length, Severity.Ok, null, 255, 90, Unit.Minutes, "255 min usable (90 min wanted)."),
            new Reason(Factor.Fog, Severity.Ok, null, null, 0.1, Unit.Fraction, "The feed has no fog figure here."),
        ];
        return [.. all.OrderByDescending(r => r.Severity).ThenBy(r => r.Factor)];
    }

    public NightSummary Summary(Instant dewOnset) => new()
    {
        CloudMean = CloudMean,
        CloudMost = CloudMost,
        Cloud = Class switch
        {
            VerdictClass.Go => "Mean 8 %, at most 21 % around 01:30, all of it high.",
            VerdictClass.Marginal => "Mean 31 %, a high veil of up to 52 % between 01:00 and 02:30.",
            _ => "Mean 78 %, up to 97 % from 00:30, low cloud with the front.",
        },
        DewOnset = Class == VerdictClass.Go ? null : dewOnset,
        LeastDewMarginK = Class == VerdictClass.Go ? 1.9 : -0.4,
        Dew = Class == VerdictClass.Go ? "None expected: the lens stays 1.9 K above the dew point." : "Expected on an unheated lens from 02:40; 3 W keeps it clear.",
        MoonIlluminatedFraction = 0.02,
        Moon = "2 % lit and below the horizon from 20:58 until 06:20.",
    };

    private Reason Cloud(Interval run) => Class switch
    {
        VerdictClass.Go => new(Factor.Cloud, Severity.Ok, null, CloudMean, 0.20, Unit.Fraction, "Mean cloud 8 % (go up to 20 %)."),
        VerdictClass.Marginal => new(Factor.Cloud, Severity.Caution, run, CloudMean, 0.20, Unit.Fraction, "Mean cloud 31 % (go up to 20 %, off from 45 %)."),
        _ => new(Factor.Cloud, Severity.Stop, run, CloudMean, 0.45, Unit.Fraction, "Mean cloud 78 % (off from 45 %)."),
    };
}

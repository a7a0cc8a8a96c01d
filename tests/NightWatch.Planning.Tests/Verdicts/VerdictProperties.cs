using CsCheck;
using NightWatch.Planning.Reasons;
using NightWatch.Planning.Tests.HandMade;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Watches;
using NodaTime;
using static NightWatch.Planning.Tests.HandMade.HourlyWeather;

namespace NightWatch.Planning.Tests.Verdicts;

/// <summary>
/// What must hold for any weather, with a kit that lasts any night: more cloud does keep dew off and does shorten the run that packs are
/// needed for, and rightly improves those factors.
/// </summary>
public sealed class VerdictProperties
{
    private static readonly Watch Heated = new DesertNight().Watch with
    {
        Kit = new Kit
        {
            DewHeaterW = 60,
            DewHeaterBatteryWh = 900,
            BatteriesWh = [90, 90],
            CardGb = 512,
        },
    };

    /// <summary>
    /// Consistent weather: rain, its probability and thunder only under cloud, fog only in moist air; gusts below gale force, a hazard also
    /// on the way home.
    /// </summary>
    private static readonly Gen<HourlyWeather> Weather = Gen.Select(
            Series(0, 1, 0.5),
            Series(0, 0.08, 0.8),
            Series(0, 0.3, 0.6),
            Series(0, 17, 0.5),
            Series(0, 0.12, 0.6),
            Series(0, 0.5, 0.7),
            Series(0.2, 9, 0.5))
        .Select(
            (cloud, rain, probability, gust, thunder, fog, depression) =>
                new HourlyWeather
                {
                    Cloud = cloud,
                    Rain = rain,
                    RainProbability = Each(hour => Math.Min(probability[hour]!.Value, rain[hour] > 0 || Before(rain, hour) > 0 ? 1 : 0.2)),
                    Gust = gust,
                    Wind = Each(hour => gust[hour] / 1.66),
                    Thunder = Each(hour => rain[hour] > 0 ? Math.Min(thunder[hour]!.Value, cloud[hour]!.Value) : 0),
                    AirC = All(10),
                    DewPointC = Each(hour => 10 - depression[hour]),
                    Fog = Each(hour => depression[hour] < 2 && Next(depression, hour) < 2 && Before(depression, hour) < 2 ? fog[hour] : 0),
                });

    [Fact]
    public void More_cloud_never_improves_a_verdict() =>
        Gen.Select(Weather, Gen.Double[0, 1]).Sample((weather, more) => IsNoBetterUnderMoreCloud(weather, more), iter: 150);

    /// <summary>Cloud moved the run past the longest wait in the field, and the packs then seemed to last where they had not.</summary>
    [Fact]
    public void More_cloud_that_shortens_the_wait_for_the_first_frame_does_not_improve_a_verdict() =>
        Gen.Select(Weather, Gen.Double[0, 1])
            .Sample((weather, more) => IsNoBetterUnderMoreCloud(weather, more), seed: "e2RALHWPSse1", iter: 1, threads: 1);

    [Fact]
    public void More_wind_rain_fog_or_thunder_never_improves_a_verdict() =>
        Gen.Select(Weather, Gen.Double[0, 8]).Sample((weather, more) =>
        {
            var now = Class(weather);
            return Class(weather with { Gust = Each(hour => weather.Gust[hour] + more) }) <= now
                && Class(weather with { Rain = Each(hour => weather.Rain[hour] + more) }) <= now
                && Class(weather with { Fog = Each(hour => Math.Min(1, weather.Fog[hour]!.Value + more)) }) <= now
                && Class(weather with { Thunder = Each(hour => Math.Min(1, weather.Thunder[hour]!.Value + more)) }) <= now;
        }, iter: 150);

    [Fact]
    public void Less_battery_never_improves_a_verdict() =>
        Gen.Select(Weather, Gen.Double[4, 120], Gen.Double[0, 60], Gen.Double[0, 1]).Sample((weather, packWh, heaterWh, left) =>
            Class(weather, Packed(packWh * left, heaterWh * left)) <= Class(weather, Packed(packWh, heaterWh)), iter: 100);

    [Fact]
    public void More_humidity_never_improves_a_verdict() =>
        Gen.Select(Weather, Gen.Double[0, 8], Gen.Double[0, 12])
            .Sample(
                (weather, more, heaterW) =>
                {
                    var kit = Heated.Kit with { DewHeaterW = heaterW };
                    return Class(
                            weather with
                            {
                                DewPointC = Each(hour => Math.Min(weather.AirC[hour]!.Value, weather.DewPointC[hour]!.Value + more)),
                            },
                            kit) <= Class(weather, kit);
                },
                iter: 100);

    /// <summary>Unknown is at best marginal, so a stop may become a question, but never a go.</summary>
    [Fact]
    public void Removing_data_never_makes_a_go_of_a_night_that_is_none() =>
        Gen.Select(Weather, Gen.Int[0, Hours], Gen.Int[0, Hours], Gen.Int[0, 4]).Sample((weather, a, b, what) =>
        {
            double?[] Cut(double?[] values) => Each(hour => hour >= Math.Min(a, b) && hour < Math.Max(a, b) ? null : values[hour]);
            var cut = what switch
            {
                0 => weather with { Cloud = Cut(weather.Cloud) },
                1 => weather with { Rain = Cut(weather.Rain) },
                2 => weather with { Gust = Cut(weather.Gust), Wind = Cut(weather.Wind) },
                3 => weather with { Fog = Cut(weather.Fog) },
                _ => weather with { AirC = Cut(weather.AirC), DewPointC = Cut(weather.DewPointC) },
            };
            return Class(weather) == VerdictClass.Go || Class(cut) != VerdictClass.Go || IsGoElsewhere(cut, Math.Min(a, b), Math.Max(a, b));
        }, iter: 150);

    [Fact]
    public void The_run_lies_within_the_dark_subject_time_and_the_worst_reason_comes_first() =>
        Weather.Sample(weather =>
        {
            var night = new DesertNight { Watch = Heated, Weather = weather };
            var plan = night.Plan();
            var run = plan.Verdict.Run!.Value;
            var dark = night.AstronomicalNight[0];
            var up = night.SubjectWindows[0];
            Assert.True(run.Start >= dark.Start && run.Start >= up.Start && run.End <= dark.End && run.End <= up.End);
            Assert.Equal(plan.Verdict.Reasons.Max(reason => reason.Severity), plan.Verdict.Deciding.Severity);
            Assert.True(plan.Verdict.Class switch
            {
                VerdictClass.Go => plan.Verdict.Deciding.Severity <= Severity.Caution,
                VerdictClass.Marginal => plan.Verdict.Deciding.Severity == Severity.Caution,
                _ => plan.Verdict.Deciding.Severity == Severity.Stop,
            });
            Assert.Equal(plan.Verdict.Reasons.Count, plan.Verdict.Reasons.Select(reason => reason.Factor).Distinct().Count());
            // A go by its chance may stand on a newest run that gives less than is wished: half of it at least, and that is said.
            if (plan.Verdict.Class != VerdictClass.NoGo && run.Duration < Duration.FromMinutes(90))
            {
                Assert.True(run.Duration >= Duration.FromMinutes(45));
                Assert.Equal(Severity.Caution, plan.Verdict.Reasons.Single(reason => reason.Factor == Factor.Length).Severity);
            }
            if (plan.Sequence is { } sequence) Assert.True(sequence.Span.Start == run.Start && sequence.Span.End <= run.End);
            Assert.InRange(plan.Verdict.Probability.Value, 0, 1);
        }, iter: 100);

    private static bool IsNoBetterUnderMoreCloud(HourlyWeather weather, double more) =>
        Class(weather with { Cloud = Each(hour => Math.Min(1, weather.Cloud[hour]!.Value + more)) }) <= Class(weather);

    /// <summary>A run may dodge the hours it knows nothing of: of the others all is known.</summary>
    private static bool IsGoElsewhere(HourlyWeather cut, int from, int to)
    {
        var run = new DesertNight { Watch = Heated, Weather = cut }.Plan().Verdict.Run!.Value;
        return run.End <= DesertNight.Noon + Duration.FromHours(from) || run.Start >= DesertNight.Noon + Duration.FromHours(to);
    }

    private static Kit Packed(double packWh, double heaterWh) =>
        Heated.Kit with
        {
            BatteriesWh = [packWh],
            DewHeaterW = 4,
            DewHeaterBatteryWh = heaterWh,
        };

    private static VerdictClass Class(HourlyWeather weather, Kit kit) =>
        new DesertNight { Watch = Heated with { Kit = kit }, Weather = weather }
            .Plan()
            .Verdict.Class;

    private static VerdictClass Class(HourlyWeather weather) => new DesertNight { Watch = Heated, Weather = weather }.Plan().Verdict.Class;

    private static Gen<double?[]> Series(double low, double high, double calmShare) =>
        Gen.Select(Gen.Double[0, 1], Gen.Double[low, high], Gen.Double[low, high].Array[Hours]).Select((calm, level, values) =>
            calm < calmShare ? All(level) : [.. values.Select(value => (double?)value)]);

    private static double?[] Each(Func<int, double?> value) => [.. Enumerable.Range(0, Hours).Select(value)];

    private static double? Before(double?[] values, int hour) => values[Math.Max(0, hour - 1)];

    private static double? Next(double?[] values, int hour) => values[Math.Min(Hours - 1, hour + 1)];
}

using System.Collections.Concurrent;
using System.Globalization;
using System.Text.RegularExpressions;
using CsCheck;
using NightWatch.Letters.Links;
using NightWatch.Letters.Policy;
using NightWatch.Letters.Tests.Plans;
using NightWatch.Letters.Views;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Reasons;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Places;
using NightWatch.Sky.Subjects;
using NightWatch.Weather.Fake;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.Known;
using NightWatch.Weather.Rain;
using NodaTime;

namespace NightWatch.Letters.Tests;

/// <summary>What a subscriber with imperial units reads of nights as the planner plans them, beside what a metric one reads.</summary>
public sealed partial class PlannedUnitsTests
{
    /// <summary>Exact by definition: foot 0.3048 m, mile 1609.344 m, inch 25.4 mm; °F = 1.8 °C + 32.</summary>
    private static readonly Dictionary<string, (string Unit, double Scale)> Imperial = new()
    {
        ["°C"] = ("°F", 1.8),
        ["m/s"] = ("mph", 3600 / 1609.344),
        ["mm/h"] = ("in/h", 1 / 25.4),
        ["mm"] = ("in", 1 / 25.4),
        ["cm"] = ("in", 1 / 2.54),
        ["km"] = ("mi", 1 / 1.609344),
        ["m"] = ("ft", 1 / 0.3048),
    };

    /// <summary>
    /// Steppe, fell, rain coast, desert and high plateau, by day and season: frost, gales, heavy rain, heat and dew all come.
    /// </summary>
    private static readonly (double LatitudeDeg, double LongitudeDeg, double ElevationM, string Zone)[] Sites =
    [
        (49.2, 102.3, 1250, "Asia/Ulaanbaatar"), (66.1, 18.9, 820, "Europe/Stockholm"), (-45.3, 167.4, 5, "Pacific/Auckland"),
        (-24.6, 15.9, 1100, "Africa/Windhoek"), (36.4, -112.6, 1900, "America/Phoenix"), (-22.9, -67.8, 4300, "America/Santiago"),
    ];

    private static readonly Gen<NightPlan> Planned = Gen.Select(
            Gen.Int[0, Sites.Length - 1],
            Gen.Int[0, 729],
            Gen.Long[1, 1_000_000],
            Gen.Int[0, 3],
            Gen.Double[1, 12],
            Gen.Double[0.1, 3],
            Gen.Double[0, 1],
            Gen.Bool)
        .Select(
            (site, day, seed, lead, gust, rain, share, has) =>
                Plan(Sites[site], new LocalDate(2026, 1, 1).PlusDays(day), seed, lead, Limits(gust, rain, share), has));

    [Fact]
    public void Every_sentence_is_said_in_the_subscribers_units_and_every_figure_converts()
    {
        var seen = new ConcurrentDictionary<string, int>();
        Planned.Sample(
            plan =>
            {
                foreach (var unit in Converted(plan)) seen.AddOrUpdate(unit, 1, (_, count) => count + 1);
            },
            iter: 60,
            threads: 1);

        Assert.All(["°C", "m/s", "mm/h", "mm", "km"], unit => Assert.True(seen.GetValueOrDefault(unit) > 0, unit));
    }

    [Fact]
    public void What_stands_in_for_gusts_and_probabilities_is_said_in_the_subscribers_units_too()
    {
        var plan = PlannedNights.Of(PlannedNights.Watch, isSparse: true);

        Assert.Contains("m/s", Converted(plan));
        Assert.Contains(
            View(plan, UnitSystem.Imperial).Reasons, reason => reason.Text.Contains("0 in/h throughout", StringComparison.Ordinal));
    }

    [Fact]
    public void A_reason_says_its_figure_and_its_limit_each_with_its_unit()
    {
        var seen = new ConcurrentDictionary<Factor, int>();
        Planned.Sample(
            plan =>
            {
                foreach (var units in (UnitSystem[])[UnitSystem.Metric, UnitSystem.Imperial])
                {
                    foreach (var (reason, said) in plan.Verdict.Reasons.Zip(View(plan, units).Reasons))
                    {
                        Assert.DoesNotMatch(BareFigure(), said.Text);
                        Assert.DoesNotMatch(BareFigure(), said.Fix ?? "");
                        if (
                            reason is not { Value: { } value, Limit: { } limit }
                            || Said(reason.Factor, units) is not var (unit, scale, rounded))
                            continue;
                        double[] figures =
                        [
                            .. AnyFigure()
                                .Matches(said.Text)
                                .Select(Figure)
                                .Where(figure => figure.Unit == unit)
                                .Select(figure => figure.Value),
                        ];
                        foreach (var expected in (double[])[value, limit])
                            Assert.True(
                                figures.Any(figure => Math.Abs(figure - expected * scale) <= rounded),
                                $"{reason.Value} {reason.Limit}: {said.Text}");
                        seen.AddOrUpdate(reason.Factor, 1, (_, count) => count + 1);
                    }
                }
            },
            iter: 60,
            threads: 1);

        Assert.All(
            [Factor.Wind, Factor.Rain, Factor.RainProbability, Factor.Thunder, Factor.Cloud],
            factor => Assert.True(seen.GetValueOrDefault(factor) > 0, $"{factor}"));
    }

    /// <summary>The units of all figures of a plan, after each was held against what the other subscriber reads.</summary>
    private static List<string> Converted(NightPlan plan)
    {
        List<string> units = [];
        foreach (var (said, other) in Sentences(View(plan, UnitSystem.Metric)).Zip(Sentences(View(plan, UnitSystem.Imperial))))
        {
            Assert.DoesNotMatch(MetricFigure(), other);
            Assert.Equal(MetricFigure().Replace(said, "#"), ImperialFigure().Replace(other, "#"));
            foreach (var (from, to) in MetricFigure().Matches(said).Zip(ImperialFigure().Matches(other)))
            {
                Assert.True(IsTheSame(Figure(from), Figure(to)), $"{said}\n{other}");
                units.Add(Figure(from).Unit);
            }
        }

        return units;
    }

    /// <summary>Unit, factor to it, and what rounding (to a tenth in metric units, then in the unit said) may take away.</summary>
    private static (string Unit, double Scale, double Rounded)? Said(Factor factor, UnitSystem units) => (factor, units) switch
    {
        (Factor.Wind, UnitSystem.Metric) => ("m/s", 1, 0.0501),
        (Factor.Wind, _) => ("mph", Imperial["m/s"].Scale, 0.5 + 0.0501 * Imperial["m/s"].Scale),
        (Factor.Rain, UnitSystem.Metric) => ("mm/h", 1, 0.0501),
        (Factor.Rain, _) => ("in/h", Imperial["mm"].Scale, 0.005 + 0.0501 * Imperial["mm"].Scale),
        (Factor.Moon, _) => ("mag", 1, 0.0501),
        (Factor.Cloud or Factor.Fog or Factor.Thunder or Factor.RainProbability, _) => ("%", 100, 0.501),
        _ => null,
    };

    private static bool IsTheSame((double Value, string Unit, double Half) metric, (double Value, string Unit, double Half) imperial)
    {
        var (unit, scale) = Imperial[metric.Unit];
        double[] offsets = metric.Unit == "°C" ? [0, 32] : [0]; // a difference of temperatures has none
        return unit == imperial.Unit
            && offsets.Any(offset =>
                Math.Abs(metric.Value * scale + offset - imperial.Value) <= metric.Half * scale + imperial.Half + 1e-9);
    }

    /// <summary>The last place said is right to a half.</summary>
    private static (double Value, string Unit, double Half) Figure(Match match)
    {
        var text = match.Groups["value"].Value.Replace('−', '-');
        var decimals = text.Contains('.', StringComparison.Ordinal) ? text.Length - text.IndexOf('.', StringComparison.Ordinal) - 1 : 0;
        // Trailing zeros are left out: inches are said to a thousandth or a hundredth, other figures to a tenth at best.
        var unit = match.Groups["unit"].Value;
        var half = unit is "in" or "in/h" ? 0.005 : decimals > 0 ? 0.05 : 0.5;
        return (double.Parse(text, CultureInfo.InvariantCulture), unit, half);
    }

    private static IEnumerable<string> Sentences(NightView view)
    {
        string?[] said =
        [
            view.Headline, view.Because, view.Next, view.ChartSays, view.FrameSays, .. view.Hazards, .. view.Packing,
            .. view.KeyTimes.Concat(view.Summaries).Concat(view.Sequence).Select(fact => fact.Text),
            // Millimetres of the rail are set on the rail.
            .. view.Field.Where(fact => fact.Name != "Move").Select(fact => fact.Text),
            .. view.Reasons.SelectMany(reason => (string?[])[reason.Text, reason.Fix]),
            .. view.Timeline.SelectMany(day => day.Rows).SelectMany(row => (string?[])[row.Title, row.Why]),
        ];
        return said.OfType<string>();
    }

    private static NightView View(NightPlan plan, UnitSystem units) => PageViews.Of(
        plan with { Watch = plan.Watch with { Letters = plan.Watch.Letters with { Units = units } } },
        new ToldNight { WatchId = plan.Watch.Id, Night = plan.Night }, [], plan.MadeAt, new LetterLinks(null, null));

    private static Limits Limits(double gustMps, double rainMmPerH, double share) => new()
    {
        GustMps = new(gustMps, gustMps + 0.1 + 5 * share),
        PrecipitationMmPerH = rainMmPerH,
        Cloud = new(0.1 + 0.4 * share, 0.6 + 0.3 * share),
        Thunder = new(0.05 + 0.1 * share, 0.3),
        PrecipitationProbability = new(0.2, 0.3 + 0.5 * share),
        UsableRunMin = 45,
        MinAltitudeDeg = 5,
    };

    private static NightPlan Plan(
        (double LatitudeDeg, double LongitudeDeg, double ElevationM, string Zone) site,
        LocalDate night,
        long seed,
        int lead,
        Limits limits,
        bool hasHeater)
    {
        var zone = DateTimeZoneProviders.Tzdb[site.Zone];
        var place = new GeoPosition(site.LatitudeDeg, site.LongitudeDeg, site.ElevationM);
        var watch = PlannedNights.Watch with
        {
            Site = PlannedNights.Watch.Site with { Position = place, Zone = zone, Horizon = new HorizonProfile([]) },
            Subject = new Subject.Stars(),
            Kit = PlannedNights.Watch.Kit with { DewHeaterW = hasHeater ? 4 : 0 },
            Limits = limits,
            Outing = new Outing { DriveMin = 60 },
        };
        var now = night.PlusDays(-lead).At(new LocalTime(9, 0)).InZoneLeniently(zone).ToInstant();
        var noon = night.At(new LocalTime(12, 0)).InZoneLeniently(zone).ToInstant();
        return NightPlanner.Plan(
            new NightInputs
            {
                Watch = watch,
                Night = night,
                Now = now,
                Weather = new PlaceWeather
                {
                    Newest = FakeForecastRun.Of(
                        new FakeWeather(seed),
                        new ForecastPlace(site.LatitudeDeg, site.LongitudeDeg, site.ElevationM),
                        now,
                        new Interval(now, noon + Duration.FromHours(30))),
                },
                RainBefore = new RainBefore(seed % 20, 72, 72),
            });
    }

    [GeneratedRegex(@"(?<![\w.:/−-])(?<value>[-−]?\d+(\.\d+)?) (?<unit>°C|K|m/s|mm/h|mm|cm|km|m)(?![\w/²])", RegexOptions.CultureInvariant)]
    private static partial Regex MetricFigure();

    [GeneratedRegex(@"(?<![\w.:/−-])(?<value>[-−]?\d+(\.\d+)?) (?<unit>°F|mph|in/h|in|mi|ft)(?![\w/²])", RegexOptions.CultureInvariant)]
    private static partial Regex ImperialFigure();

    [GeneratedRegex(@"(?<![\w.:/−-])(?<value>[-−]?\d+(\.\d+)?) (?<unit>m/s|mph|mm/h|in/h|mag|%)(?![\w/²])", RegexOptions.CultureInvariant)]
    private static partial Regex AnyFigure();

    /// <summary>"a caution from 9, ...", "below 0.1."</summary>
    [GeneratedRegex(@"\b(from|below|than|reach|up to|at least|at most) [-−]?\d+(\.\d+)?(?=[,;]|\.?$|\. )", RegexOptions.CultureInvariant)]
    private static partial Regex BareFigure();
}

using System.Globalization;
using System.Reflection;
using System.Text.RegularExpressions;
using CsCheck;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Reasons;
using NightWatch.Planning.Watches;

namespace NightWatch.Words.Tests;

/// <summary>
/// Over planned nights: whatever is said to an imperial reader is what a metric reader is told, in the same words, with every figure
/// converted.
/// </summary>
public sealed partial class UnitsPropertyTests
{
    // Exact by definition: foot, mile, inch; mile an hour 0.44704 m/s. Tolerance: half of the last place that is said, of both.
    private static readonly Dictionary<(string Metric, string Imperial), (double Scale, double Offset, double Within)> Pairs = new()
    {
        [("m/s", "mph")] = (0.44704, 0, 0.05 + 0.224),
        [("mm", "in")] = (25.4, 0, 0.05 + 0.127),
        [("mm/h", "in/h")] = (25.4, 0, 0.05 + 0.127),
        [("cm", "in")] = (2.54, 0, 0.5 + 1.27),
        [("km", "mi")] = (1.609344, 0, 0.5 + 0.805),
        [("m", "ft")] = (0.3048, 0, 0.5 + 0.153),
        [("°C", "°F")] = (1 / 1.8, -32 / 1.8, 0.5 + 0.278),
    };

    private static readonly (double Scale, double Offset, double Within) Apart = (1 / 1.8, 0, 0.05 + 0.028);

    /// <summary>Part of an English sentence, no figure of the night.</summary>
    private const string AlcoholInWords = "0.05 %";

    [Fact]
    public void An_imperial_sentence_says_the_same_quantities_in_the_same_words() =>
        PlannedNights.All.Sample(
            plan =>
            {
                var metric = Said(plan, new Speech(English.Instance, UnitSystem.Metric, plan.Watch.Site.Zone));
                var imperial = Said(plan, new Speech(English.Instance, UnitSystem.Imperial, plan.Watch.Site.Zone));
                Assert.Equal(metric.Count, imperial.Count);
                foreach (var (told, toldElsewhere) in metric.Zip(imperial)) Same(told.Text, toldElsewhere.Text, told.IsApart);
            },
            iter: 150);

    /// <summary>Another language brings its own signs: no figure of a sentence is written past it.</summary>
    [Fact]
    public void Every_figure_is_written_with_the_languages_own_decimal_sign() =>
        PlannedNights.All.Sample(
            plan =>
            {
                var comma = DispatchProxy.Create<ILanguage, WithComma>();
                var speech = new Speech(comma, UnitSystem.Metric, plan.Watch.Site.Zone);
                var said = Said(plan, speech).Select(one => one.Text).ToList();
                if (plan.Motion is { } motion) said.Add(comma.Motion(motion, speech));
                foreach (var text in said)
                    Assert.DoesNotMatch(@"\d\.\d", text.Replace(AlcoholInWords, "", StringComparison.Ordinal));
            },
            iter: 40);

    /// <summary>Everything that a night says; and whether its temperatures are differences.</summary>
    private static List<(string Text, bool IsApart)> Said(NightPlan plan, Speech speech)
    {
        List<(string Text, bool IsApart)> said = [];
        foreach (var reason in plan.Verdict.Reasons)
        {
            var isApart = reason.Factor is Factor.Dew or Factor.Fog;
            said.Add((speech.Whole(reason), isApart));
            if (speech.Fix(reason) is { } fix) said.Add((fix, isApart));
        }

        said.AddRange(plan.Cautions.Select(caution => (speech.Of(caution), false)));
        said.AddRange(plan.Packing.Select(item => (speech.Of(item), false)));
        said.AddRange(plan.Timeline.Select(entry => (speech.Title(entry), false)));
        said.AddRange(plan.Timeline.Select(entry => (speech.Why(entry) ?? "", entry is TimelineEntry.HeaterOn)));
        said.AddRange([(speech.Cloud(plan.Summary), false), (speech.Dew(plan.Summary), true), (speech.Moon(plan.Summary), false)]);
        if (plan.Power is { } power) said.Add((speech.Language.Batteries(power, plan.Watch.Kit.BatteriesWh.Count, speech), false));
        said.AddRange(Field(plan, speech).Select(text => (text, true)));
        return said;
    }

    // Without the move: millimetres of the rail are set on the rail, for every reader.
    private static IEnumerable<string> Field(NightPlan plan, Speech speech)
    {
        var language = speech.Language;
        if (plan.Framing is { } framing) yield return language.Aim(framing, speech);
        if (plan.SkyLevel is { } level) yield return language.SkyInFrame(level, speech);
        if (plan.SkyBrightness is { } sky) yield return language.DarkSky(sky, speech);
        if (plan.Lens is { } lens) yield return language.Lens(lens, plan.Watch.Kit, speech);
        if (plan.Ground is { } ground) yield return language.Ground(ground, speech);
        if (plan.Storage is { } storage && language.CardChange(storage, speech) is { } change) yield return change;
        yield return language.ChoiceFigures(plan, speech);
        yield return language.WeekNight(plan, isFree: false, speech);
        if (plan.Sequence is not { } frames) yield break;
        yield return language.Frames(frames, speech);
        yield return language.PlaysFor(frames, speech);
        yield return language.StarTrails(frames, speech);
        yield return language.TestFrames(frames, speech);
    }

    private static void Same(string metric, string imperial, bool isApart)
    {
        Assert.Equal(Figures().Replace(metric, "#"), Figures().Replace(imperial, "#"));
        foreach (var (here, there) in Figures().Matches(metric).Zip(Figures().Matches(imperial)))
        {
            var units = (here.Groups["unit"].Value, there.Groups["unit"].Value);
            Assert.True(Pairs.TryGetValue(units, out var pair), $"'{here}' is told as '{there}': {imperial}");
            if (isApart && pair.Offset != 0) pair = Apart;
            var converted = Value(there) * pair.Scale + pair.Offset;
            Assert.True(Math.Abs(converted - Value(here)) <= pair.Within + 1e-9, $"'{here}' is told as '{there}': {imperial}");
        }
    }

    private static double Value(Match figure) => double.Parse(figure.Groups["value"].Value.Replace('−', '-'), CultureInfo.InvariantCulture);

    [GeneratedRegex(@"(?<value>−?\d+(\.\d+)?) (?<unit>°C|°F|m/s|mph|mm/h|in/h|mm|in|cm|km|mi|m|ft)(?![\w/²])")]
    private static partial Regex Figures();

    /// <summary>English, but for its decimal sign.</summary>
    public class WithComma : DispatchProxy
    {
        private static readonly CultureInfo Comma = MakeComma();

        protected override object? Invoke(MethodInfo? targetMethod, object?[]? args) =>
            targetMethod!.Name == $"get_{nameof(ILanguage.Culture)}" ? Comma : targetMethod.Invoke(English.Instance, args);

        private static CultureInfo MakeComma()
        {
            var culture = (CultureInfo)English.Instance.Culture.Clone();
            culture.NumberFormat.NumberDecimalSeparator = ",";
            return culture;
        }
    }
}

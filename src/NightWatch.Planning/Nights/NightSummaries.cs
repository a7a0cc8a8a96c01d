using NightWatch.Planning.Dew;
using NightWatch.Planning.Judging;
using NodaTime;

namespace NightWatch.Planning.Nights;

/// <summary>The cloud, dew and Moon sentences that open every letter.</summary>
internal static class NightSummaries
{
    /// <summary>Over the run; without one over the astronomical night, or the whole grid where there is none.</summary>
    public static NightSummary Of(NightEvidence night, ShootingPlan? plan, LensTrack lens)
    {
        var span = plan?.Run.Span ?? (night.Sky.AstronomicalNight.Count > 0 ? night.Sky.AstronomicalNight[0] : night.Grid.Span);
        var (first, last) = night.Grid.Cells(span);
        var cloud = Spread.Of(night.Weather.Cloud, first, last);
        var margin = Spread.Of(lens.MarginK, first, last);
        var onset = lens.Onset is { } at && at < span.End ? lens.Onset : null;
        return new NightSummary
        {
            CloudMean = cloud.Mean,
            CloudMost = cloud.Most,
            Cloud = Cloud(night, cloud, first, last),
            DewOnset = onset,
            LeastDewMarginK = margin.Least,
            Dew = Dew(night, lens, onset, margin.Least),
            MoonIlluminatedFraction = night.Sky.Moon.IlluminatedFraction,
            Moon = Moon(night, span, first, last),
        };
    }

    private static string Cloud(NightEvidence night, Spread cloud, int first, int last)
    {
        if (cloud.Mean is not { } mean || cloud.Most is not { } most) return "Cloud is not known.";
        var words = mean switch { <= 0.05 => "Clear", <= 0.2 => "Mostly clear", <= 0.45 => "Broken cloud", <= 0.8 => "Mostly cloudy", _ => "Overcast" };
        var text = $"{words}: {Said.Percent(mean)} on average, {Said.Percent(most)} at most";
        var layers = new[]
        {
            ("low", Spread.Of(night.Weather.LowCloud, first, last).Mean), ("medium", Spread.Of(night.Weather.MediumCloud, first, last).Mean),
            ("high", Spread.Of(night.Weather.HighCloud, first, last).Mean),
        };
        var told = layers.Where(layer => layer.Item2 is >= 0.1).Select(layer => $"{layer.Item1} {Said.Percent(layer.Item2!.Value)}").ToArray();
        return told.Length == 0 ? text + "." : $"{text} ({string.Join(", ", told)}).";
    }

    private static string Dew(NightEvidence night, LensTrack lens, Instant? onset, double? least)
    {
        if (least is not { } margin) return "Dew cannot be told: temperature, humidity, cloud or wind is not known.";
        var deposit = lens.Outcome.IsFrost ? "Frost" : "Dew";
        if (onset is not { } at)
        {
            return margin < ClosestToDewK
                ? $"{deposit} is close: the lens comes within {Said.OneDecimal(ClosestToDewK)} K of it, and forecasts err by more."
                : $"No dew expected: the lens stays {Said.OneDecimal(margin)} K above its dew point.";
        }

        var heater = night.Watch.Kit.DewHeaterW;
        return heater <= 0 ? $"{deposit} on an unheated lens from {Said.Clock(at, night.Zone)}; no heater in the kit."
            : lens.HeatedOnset is { } late ? $"{deposit} from {Said.Clock(at, night.Zone)}; the heater holds it off until {Said.Clock(late, night.Zone)}."
            : $"{deposit} on an unheated lens from {Said.Clock(at, night.Zone)}; heater on by {Said.Clock(lens.HeaterOn ?? at, night.Zone)}.";
    }

    private static string Moon(NightEvidence night, Interval span, int first, int last)
    {
        var lit = Said.Percent(night.Sky.Moon.IlluminatedFraction);
        var zone = night.Zone;
        var changes = night.Sky.Moon.Rises.Where(span.Contains).Select(at => $"rises {Said.Clock(at, zone)}")
            .Concat(night.Sky.Moon.Sets.Where(span.Contains).Select(at => $"sets {Said.Clock(at, zone)}")).ToArray();
        var most = Spread.Of(night.Above.MoonBrighteningMag, first, last).Most ?? 0;
        // The Moon is up and the subject is not: there is no sky at the subject to be brightened.
        var isUnsaid = most <= 0 && Enumerable.Range(first, last - first + 1).Any(step => night.Above.Steps[step].Moon.Direction.AltitudeDeg > 0);
        var light = isUnsaid ? ""
            : most >= LeastSaidMag ? $"; it brightens the sky at the subject by up to {Said.OneDecimal(most)} mag"
            : most > 0 ? "; it adds next to no light" : "; it adds no light";
        var moves = changes.Length > 0 ? string.Join(", ", changes) : night.Above.Steps[first].Moon.Direction.AltitudeDeg > 0 ? "up throughout" : "down throughout";
        return $"Moon {lit} lit, {moves}{light}.";
    }

    /// <summary>A lens this near its dew point is not said to stay clear: screen temperatures are forecast to a degree or so (engineering choice).</summary>
    private const double ClosestToDewK = 0.5;

    /// <summary>Less than this would be said as 0.0.</summary>
    private const double LeastSaidMag = 0.05;

    /// <summary>Of the known cells; nulls where none is known.</summary>
    private readonly record struct Spread(double? Mean, double? Least, double? Most)
    {
        public static Spread Of(double[] values, int first, int last)
        {
            double sum = 0, least = double.PositiveInfinity, most = double.NegativeInfinity;
            var known = 0;
            for (var cell = first; cell <= last; cell++)
            {
                if (double.IsNaN(values[cell])) continue;
                known++;
                sum += values[cell];
                least = Math.Min(least, values[cell]);
                most = Math.Max(most, values[cell]);
            }

            return known == 0 ? default : new Spread(sum / known, least, most);
        }
    }
}

using NightWatch.Planning.Dew;
using NightWatch.Planning.Reasons;
using NightWatch.Planning.Verdicts;

namespace NightWatch.Planning.Nights;

/// <summary>The cloud, dew and Moon that open every letter.</summary>
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
        var moon = night.Sky.Moon;
        var brightening = Spread.Of(night.Above.MoonBrighteningMag, first, last).Most ?? 0;
        // The Moon is up and the subject is not: there is no sky at the subject to be brightened.
        var isUnsaid =
            brightening <= 0
            && Enumerable.Range(first, last - first + 1).Any(step => night.Above.Steps[step].Moon.Direction.AltitudeDeg > 0);
        return new NightSummary
        {
            CloudMean = cloud.Mean,
            CloudMost = cloud.Most,
            LowCloudMean = Spread.Of(night.Weather.LowCloud, first, last).Mean,
            MediumCloudMean = Spread.Of(night.Weather.MediumCloud, first, last).Mean,
            HighCloudMean = Spread.Of(night.Weather.HighCloud, first, last).Mean,
            DewOnset = onset,
            LeastDewMarginK = plan is null ? margin.Least : Told(lens),
            IsFrost = lens.Outcome.IsFrost,
            HasHeater = night.Watch.Kit.DewHeaterW > 0,
            HeaterOn = lens.HeaterOn,
            HeatedOnset = lens.HeatedOnset,
            MoonIlluminatedFraction = moon.IlluminatedFraction,
            MoonTurns = [.. MoonTurn.Of(moon).Where(turn => span.Contains(turn.At))],
            MoonIsUp = night.Above.Steps[first].Moon.Direction.AltitudeDeg > 0,
            MoonBrighteningMag = isUnsaid ? null : brightening,
        };
    }

    /// <summary>From when the lens is out to the end of the run, as the reason has it; null where that cannot be told.</summary>
    private static double? Told(LensTrack lens) =>
        double.IsNaN(lens.Outcome.LeastMarginK) || (lens.Outcome.UnknownSamples > 0 && lens.Onset is null)
            ? null
            : lens.Outcome.LeastMarginK;

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

using NightWatch.Planning.Chance;
using NightWatch.Planning.Conditions;
using NightWatch.Planning.Worth;

namespace NightWatch.Planning.Verdicts;

/// <summary>What one forecast run says of a night, as the figures that a chance is made of.</summary>
internal static class NightFigures
{
    /// <summary>Middle of the usual figures of cloud, 20 and 45 %: those that the chance was fitted with.</summary>
    private const double UsualMiddle = 0.325;

    /// <summary>Works out a run.</summary>
    /// <param name="night">Sky, windows, limits.</param>
    /// <param name="weather">The run.</param>
    /// <returns>Null: the cloud of no window is known throughout.</returns>
    public static ForecastFigures? Of(NightEvidence night, WeatherTrack weather) =>
        Of(night, weather, WeatherWorth.Of(weather, night.Limits));

    /// <summary>The same with the weather's shares of a frame's worth given.</summary>
    public static ForecastFigures? Of(NightEvidence night, WeatherTrack weather, WeatherWorth shares)
    {
        var windows = WindowCells.Of(night.Grid, night.Candidates).ToArray();
        if (!Array.Exists(windows, window => Covers(weather, window))) return null;
        var worth = shares.Under(night.Dark);
        var (worthMin, gustSum, gusts, rain, stretch) = (0.0, 0.0, 0, double.NaN, 0.0);
        foreach (var window in windows)
        {
            for (var cell = window.First; cell <= window.Last; cell++)
            {
                if (!double.IsNaN(worth[cell])) worthMin += worth[cell] * window.Minutes(cell);
                if (!double.IsNaN(weather.GustMps[cell])) (gustSum, gusts) = (gustSum + weather.GustMps[cell], gusts + 1);
                if (!(weather.RainProbability[cell] <= rain))
                    rain = double.IsNaN(weather.RainProbability[cell]) ? rain : weather.RainProbability[cell];
            }

            stretch = Math.Max(stretch, BestClearing(night, weather, shares, window));
        }

        var usableMin = RunChoice.Best(night, worth)?.UsableMin ?? 0;
        return new ForecastFigures(usableMin, worthMin, stretch, gusts == 0 ? double.NaN : gustSum / gusts, rain);
    }

    /// <summary>
    /// Greatest mean, over as long as a run must be, of how clear the sky is by the watch's own measure times the other shares: what cloud
    /// leaves of the sky for the usual figures of cloud, and as much at the middle of other figures as at the middle of those. Unknown
    /// cloud leaves none.
    /// </summary>
    private static double BestClearing(NightEvidence night, WeatherTrack weather, WeatherWorth shares, in WindowCells window)
    {
        var need = night.Limits.UsableRunMin;
        var middle = (night.Limits.Cloud.Caution + night.Limits.Cloud.Stop) / 2;
        var power = Math.Log(UsualMiddle) / Math.Log(Math.Clamp(middle, 0.001, 0.95));
        var (best, sum, minutes, from) = (0.0, 0.0, 0.0, window.First);
        for (var to = window.First; to <= window.Last; to++)
        {
            (sum, minutes) = (sum + Clearing(to) * window.Minutes(to), minutes + window.Minutes(to));
            while (from < to && minutes - window.Minutes(from) >= need)
            {
                (sum, minutes) = (sum - Clearing(from) * window.Minutes(from), minutes - window.Minutes(from));
                from++;
            }

            best = Math.Max(best, sum / Math.Max(need, minutes));
        }

        return Math.Clamp(best, 0, 1);

        double Clearing(int cell) =>
            double.IsNaN(weather.Cloud[cell])
                ? 0
                : (1 - Math.Pow(weather.Cloud[cell], power)) * night.Dark[cell] * shares.Steady[cell] * shares.Dry[cell];
    }

    private static bool Covers(WeatherTrack weather, in WindowCells window)
    {
        for (var cell = window.First; cell <= window.Last; cell++)
        {
            if (double.IsNaN(weather.Cloud[cell])) return false;
        }

        return true;
    }
}

using NightWatch.Planning.Conditions;
using NightWatch.Planning.Grid;

namespace NightWatch.Planning.Verdicts;

/// <summary>What a second feed says of the same run.</summary>
/// <param name="Differs">One finds the night usable and the other does not, or their mean cloud lies 30 % of the sky or more apart.</param>
/// <param name="Usable">The second feed finds a usable run.</param>
/// <param name="Cloud">Its mean cloud over the main forecast's run; NaN when unknown.</param>
/// <param name="Chance">The chance by its own figures.</param>
internal sealed record SecondOpinion(bool Differs, bool Usable, double Cloud, double Chance)
{
    /// <summary>The published skill counts an error below this as a hit, so forecasts nearer than this agree.</summary>
    public const double CloudApart = 0.30;

    /// <summary>Null without a second feed, or where it does not know the run's cloud.</summary>
    public static SecondOpinion? Of(NightEvidence night, Run run, double skyMin)
    {
        if (night.Inputs.Weather.SecondOpinion is not { } series || night.Inputs.Weather.Newest is null) return null;
        var track = WeatherTrack.Of(series, night.Grid).CompletedBy(night.Weather);
        var cloud = RunMean.Of(track.Cloud, run);
        if (
            double.IsNaN(cloud)
            || NightFigures.Of(night, track) is not { } figures
            || NightFigures.Of(night, night.Weather) is not { } main)
            return null;
        var usable = figures.UsableMin >= night.Limits.UsableRunMin;
        var differs =
            usable != main.UsableMin >= night.Limits.UsableRunMin || Math.Abs(cloud - RunMean.Of(night.Weather.Cloud, run)) >= CloudApart;
        return new SecondOpinion(differs, usable, cloud, UsableChance.OfOther(night, figures, skyMin));
    }
}

using System.Collections.Immutable;

namespace NightWatch.Planning.Chance;

/// <summary>What a forecast says of a night, as the few figures that make a chance. None has a unit; each has a fixed centre.</summary>
/// <param name="Newest">Of the newest run alone.</param>
/// <param name="Runs">Of the newest run with earlier ones or members; null: there were none.</param>
/// <param name="Room">How much longer the sky without weather would serve than is needed, 0 to 2; more is better.</param>
/// <param name="Gust">The newest run's wind, -2 to 3; more is worse; 0: unknown.</param>
/// <param name="Rain">The newest run's greatest probability of rain; more is worse; null: unknown.</param>
/// <remarks>
/// <para>
/// With more cloud, wind, rain, moonlight or glow, or a greater need, share, worth, stretch and room fall or stay and gust and rain rise or
/// stay; with the signs of <see cref="FigureSets.Signs"/> a chance then never rises. The centres and widths are engineering choices; the
/// coefficients are fitted to them.
/// </para>
/// <para>
/// A run that is older by a hours weighs exp(-a/18), and counts up to 48 hours. As neighbouring runs know of each other, their effective
/// number (sum w)^2 / sum w^2 (Kish 1965, Survey Sampling) is held at 7. Members weigh as runs of the age 0: no archive of members was at
/// hand to fit them.
/// </para>
/// </remarks>
public readonly record struct ChanceFigures(ForecastShape Newest, ForecastShape? Runs, double Room, double Gust, double? Rain)
{
    /// <summary>An older run than this says nothing, hours.</summary>
    public const double OldestHours = 48;

    /// <summary>A run that is older by this weighs 1/e, hours.</summary>
    private const double FadingHours = 18;

    /// <summary>More runs than this know nothing more.</summary>
    private const double MostRuns = 7;

    /// <summary>Minutes added on both sides of a ratio, so that little against little is not a great ratio.</summary>
    private const double SoftMin = 20;

    /// <summary>All that is known, as the set of coefficients that uses it.</summary>
    public FigureSet Set => (Runs, Rain) switch
    {
        (not null, not null) => FigureSet.RunsAndRain,
        (not null, null) => FigureSet.Runs,
        (null, not null) => FigureSet.NewestAndRain,
        (null, null) => FigureSet.Newest,
    };

    /// <summary>Makes the figures of a night.</summary>
    /// <param name="newest">What the newest run says; its gust and rain alone are used.</param>
    /// <param name="others">Earlier runs, and members of the newest at age 0, in any order. Those past 48 hours are left out.</param>
    /// <param name="needMin">Usable minutes that make the night usable, more than 0.</param>
    /// <param name="clearSkyUsableMin">Usable minutes of the best stretch of the sky without weather, 0 or more.</param>
    /// <exception cref="ArgumentException">A figure is outside its range; the message names it.</exception>
    public static ChanceFigures Of(
        ForecastFigures newest, IReadOnlyCollection<AgedForecast> others, double needMin, double clearSkyUsableMin)
    {
        ArgumentNullException.ThrowIfNull(others);
        if (!(double.IsFinite(needMin) && needMin > 0))
            throw new ArgumentException($"The need is {needMin}; accepted: more than 0 minutes.", nameof(needMin));
        if (!(double.IsFinite(clearSkyUsableMin) && clearSkyUsableMin >= 0))
            throw new ArgumentException($"The clear sky gives {clearSkyUsableMin}; accepted: 0 or more.", nameof(clearSkyUsableMin));
        newest.Check();
        foreach (var run in others)
        {
            run.Figures.Check();
            if (!(run.AgeHours >= 0))
                throw new ArgumentException($"A run's age is {run.AgeHours}; accepted: 0 or more hours.", nameof(others));
        }

        AgedForecast[] counted = [.. others.Where(run => run.AgeHours <= OldestHours)];
        return new ChanceFigures(
            OfOne(newest, needMin),
            counted.Length > 0 ? OfSeveral([new AgedForecast(newest, 0), .. counted], needMin) : null,
            Math.Clamp(Math.Log(clearSkyUsableMin / needMin), 0, 2),
            double.IsNaN(newest.GustMps) ? 0 : Math.Clamp((newest.GustMps - 6) / 3, -2, 3),
            double.IsNaN(newest.RainProbability) ? null : (100 * newest.RainProbability - 20) / 25);
    }

    /// <summary>Whether all figures of a set are known; what is known of more is known of less.</summary>
    public bool Has(FigureSet set) => (!set.HasRuns() || Runs is not null) && (!set.HasRain() || Rain is not null);

    /// <summary>The figures of a set: one, share, worth, stretch, room, gust and, where the set has it, rain.</summary>
    /// <exception cref="InvalidOperationException">Not all of them are known.</exception>
    public ImmutableArray<double> Of(FigureSet set)
    {
        if (!Has(set)) throw new InvalidOperationException($"The figures of {set} are not all known.");
        var shape = set.HasRuns() ? Runs!.Value : Newest;
        return set.HasRain()
            ? [1, shape.Share, shape.Worth, shape.Stretch, Room, Gust, Rain!.Value]
            : [1, shape.Share, shape.Worth, shape.Stretch, Room, Gust];
    }

    private static ForecastShape OfOne(ForecastFigures run, double needMin) =>
        new(Math.Clamp(LogRatio(run.UsableMin, needMin), -2, 1), WorthOf(run.WorthMin, needMin), StretchOf(run.Stretch));

    private static ForecastShape OfSeveral(AgedForecast[] runs, double needMin)
    {
        var (all, squares, reach, miss, worth, stretch) = (0.0, 0.0, 0.0, 0.0, 0.0, 0.0);
        foreach (var run in runs)
        {
            var weight = Math.Exp(-run.AgeHours / FadingHours);
            (all, squares) = (all + weight, squares + weight * weight);
            (worth, stretch) = (worth + weight * run.Figures.WorthMin, stretch + weight * run.Figures.Stretch);
            if (run.Figures.UsableMin >= needMin) reach += weight;
            else miss += weight;
        }

        var n = Math.Min(all * all / squares, MostRuns);
        var share = Math.Log((reach / all * n + .5) / (miss / all * n + .5));
        return new ForecastShape(share, WorthOf(worth / all, needMin), StretchOf(stretch / all));
    }

    private static double WorthOf(double worthMin, double needMin) => Math.Clamp(LogRatio(worthMin, needMin), -2, 1.5);

    private static double StretchOf(double stretch) => 4 * (stretch - .5);

    private static double LogRatio(double minutes, double needMin) => Math.Log((minutes + SoftMin) / (needMin + SoftMin));
}

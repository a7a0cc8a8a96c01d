using NightWatch.Planning.Nights;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Verification;
using NightWatch.Planning.Verification.Expenses;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Nights;
using NightWatch.Sky.Time;
using NightWatch.Watchkeeping.Evaluations;
using NightWatch.Watchkeeping.Photographers;
using NightWatch.Weather.Known;
using NightWatch.Weather.Rain;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Watchkeeping.Archives;

/// <summary>Looks at every night of an archive as the service would have, and judges it by the hours that came.
/// It knows nothing later than each look.</summary>
/// <param name="watch">The watch that is tried.</param>
/// <param name="runs">What was forecast.</param>
/// <param name="came">The hours that came.</param>
/// <param name="look">Local time of the looks.</param>
/// <param name="chances">By which the looks are taken; null: those that come with the program.</param>
internal sealed class ArchiveTrial(
    Watch watch, ArchivedForecastRuns runs, ForecastSeries came, LocalTime look, ArchiveChances? chances = null)
{
    /// <summary>The farthest ahead that a run is asked for: a look on the third day before, by a run of a day's age,
    /// over a whole night.</summary>
    public static readonly Duration LongestAhead = Duration.FromDays(6);

    private const int RainHours = 72;
    private static readonly Duration Hour = Duration.FromHours(1);

    private readonly SharedSky sky = new();
    private readonly ArchiveChances chances = chances ?? ArchiveChances.Shipped;

    /// <summary>Every night that the hours which came touch, in order, whatever the number of threads.</summary>
    public IReadOnlyList<ArchivedNight> Run(CancellationToken stop)
    {
        var nights = ArchiveNights.Of(came, watch.Site.Zone);
        var all = new ArchivedNight[nights.Count];
        Parallel.For(0, all.Length, new ParallelOptions { CancellationToken = stop, MaxDegreeOfParallelism = Environment.ProcessorCount },
            i => all[i] = Of(nights[i]));
        return all;
    }

    private ArchivedNight Of(LocalDate night)
    {
        var span = NightSpan.Of(watch.Site.Zone, night);
        var best = Plan(night, span.Start, new PlaceWeather { Newest = BestWeather(span) }, new RainBefore(0, RainHours, RainHours));
        var dark = best.Sky.AstronomicalNight is { Count: > 0 } parts ? new Interval(parts[0].Start, parts[^1].End) : (Interval?)null;
        ArchivedLook[] looks = [.. Enumerable.Range(0, Photographer.LeadNights + 1).Select(lead => LookAt(night, lead, dark))];
        var use =
            best.Verdict.Probability.Basis == ProbabilityBasis.SkyAlone
            || best.Verdict.UsableMin < watch.Limits.UsableRunMin
            || dark is null
                ? NightUse.NotTheWeathers
            : CameHours.TellsCloud(came, dark.Value) ? NightUse.Scored
            : NightUse.CloudUnknown;
        // The night is evaluated as for a call, but with the weather that came, since all of it is over.
        bool? usable = use switch
        {
            NightUse.NotTheWeathers => false,
            NightUse.CloudUnknown => null,
            _ => NightEvaluation.Came(watch, night, came.KeptAs(came.Id, span.End), span.End, sky).Verdict.Class != VerdictClass.NoGo,
        };
        return new ArchivedNight(
            night, use, usable,
            use == NightUse.Scored && !CameHours.Tells(came, PeriodQuantity.PrecipitationMm, dark!.Value),
            use == NightUse.Scored && !CameHours.Tells(came, PeriodQuantity.GustMps, dark!.Value),
            looks,
            use == NightUse.Scored && looks[0].HasForecast ? LettersOf(night, usable!.Value) : null);
    }

    private ArchivedLook LookAt(LocalDate night, int lead, Interval? dark)
    {
        var at = LocalClock.At(watch.Site.Zone, night.PlusDays(-lead), look);
        var known = runs.KnownAt(at);
        return ArchivedLook.Of(lead, at, Plan(night, at, known), known.Newest, dark);
    }

    private LetterCourse LettersOf(LocalDate night, bool usable)
    {
        var lived = Photographer.Live(watch, night, (at, told) => Plan(night, at, runs.KnownAt(at), told: told));
        return new LetterCourse(lived.Letters, lived.Flips, lived.EverOn, lived.OnAtLast, usable);
    }

    private NightPlan Plan(LocalDate night, Instant now, PlaceWeather weather, RainBefore? rain = null, VerdictClass? told = null) =>
        NightEvaluation.Of(watch, night, weather, chances.At(night, now), now, sky, rain, told).Plan;

    /// <summary>Clear, calm, mild and dry, so that what is left to stop a night is not the weather.</summary>
    private ForecastSeries BestWeather(Interval span)
    {
        var builder = new ForecastSeriesBuilder();
        for (var at = span.Start - Hour; at <= span.End + Hour; at += Hour)
        {
            builder.Add(InstantQuantity.CloudAreaFraction, at, 0)
                .Add(InstantQuantity.AirTemperatureC, at, 10)
                .Add(InstantQuantity.DewPointC, at, -5)
                .Add(InstantQuantity.WindMps, at, 1)
                .Add(PeriodQuantity.PrecipitationMm, at, at + Hour, 0)
                .Add(PeriodQuantity.PrecipitationProbability, at, at + Hour, 0)
                .Add(PeriodQuantity.GustMps, at, at + Hour, 2);
        }

        return builder.Build(came.FeedId, came.ModelId, span.Start, span.Start, came.Attribution, came.Cell);
    }
}

using System.Collections.Immutable;
using NightWatch.Planning.Chance;
using NightWatch.Planning.Conditions;
using NightWatch.Planning.Nights;
using NightWatch.Planning.SkyBrightness;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Worth;
using NightWatch.Sky.Ephemeris;
using NightWatch.Sky.Nights;
using NightWatch.Weather.Known;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Planning.Samples;

/// <summary>
/// A night whose sky is worked out once, asked by many forecasts, and by the hours that came, for what a chance is fitted on.
/// </summary>
/// <remarks>It is the verdict's own evaluation, over pieces of the night and for needs of other lengths.</remarks>
public sealed class NightSamples
{
    private readonly NightEvidence night;
    private readonly ImmutableArray<(NightEvidence Night, double SkyMin)> asked;

    private NightSamples(NightEvidence night, ImmutableArray<SampleQuestion> questions)
    {
        (this.night, Questions) = (night, questions);
        asked =
        [
            .. from question in questions
               let piece = night with
               {
                   Inputs = night.Inputs with
                   {
                       Watch = night.Watch with { Limits = night.Limits with { UsableRunMin = question.NeedMin } },
                   },
                   Candidates = question.IsWatchs ? night.Candidates : Within(night.Candidates, question.Piece),
               }
               select (piece, RunChoice.Best(piece, night.Dark)?.UsableMin ?? 0),
        ];
    }

    /// <summary>Those that the sky without weather would grant; what it does not is no matter of the weather.</summary>
    public ImmutableArray<SampleQuestion> Questions { get; }

    /// <summary>The dark hours that the watch may use; null: there are none.</summary>
    public Interval? Dark => night.Candidates is { Count: > 0 } all ? new Interval(all[0].Start, all[^1].End) : null;

    /// <summary>Works out a night's sky.</summary>
    /// <param name="inputs">Watch, night and clock reading; the weather is not used.</param>
    /// <param name="ephemeris">Shared positions of Sun and Moon.</param>
    /// <param name="isPooled">Whether to ask more than the watch's own question.</param>
    public static NightSamples Of(NightInputs inputs, SkyEphemeris ephemeris, bool isPooled)
    {
        var site = inputs.Watch.Site;
        var sky = NightPlanner.SkyOf(inputs, ephemeris);
        var grid = NightPlanner.GridOf(sky);
        var glow = inputs.Glow ?? SiteSkyGlow.Of(site.Position, site.MeasuredSkyBrightness);
        var above = new SiteSky(site.Position, sky.Span, ephemeris);
        var night = NightPlanner.EvidenceOf(
            inputs with { Weather = PlaceWeather.Unknown }, sky, glow, grid, SkyTrack.Of(above, inputs.Watch.Subject, glow, grid),
            at => above.SunAt(at).AltitudeDeg);
        var samples = new NightSamples(night, QuestionsOf(night, isPooled));
        return new NightSamples(night, [.. samples.Questions.Where((question, i) => samples.asked[i].SkyMin >= question.NeedMin)]);
    }

    /// <summary>What a look's forecasts say to each question; a question whose cloud they do not know is left out.</summary>
    public IReadOnlyList<NightSample> Look(PlaceWeather known)
    {
        ArgumentNullException.ThrowIfNull(known);
        if (known.Newest is not { } series || asked.Length == 0) return [];
        var newest = Seen(WeatherTrack.Of(series, night.Grid));
        var (members, earlier) = (Others(known.Members), Others(known.EarlierRuns));
        var found = new List<NightSample>(asked.Length);
        for (var i = 0; i < asked.Length; i++)
        {
            var (piece, skyMin) = asked[i];
            if (NightFigures.Of(piece, newest.Track, newest.Shares) is not { } figures) continue;
            var others = Figures(members);
            if (others.Count < UsableChance.FewestMembers) others = Figures(earlier);
            found.Add(new NightSample(i, ChanceFigures.Of(figures, others, Questions[i].NeedMin, skyMin)));

            List<AgedForecast> Figures(List<(double AgeHours, WeatherTrack Track, WeatherWorth Shares)> runs) =>
            [
                .. from run in runs
                   let said = NightFigures.Of(piece, run.Track, run.Shares)
                   where said is not null
                   select new AgedForecast(said.Value, run.AgeHours),
            ];
        }

        return found;

        (WeatherTrack Track, WeatherWorth Shares) Seen(WeatherTrack track) => (track, WeatherWorth.Of(track, night.Limits));

        List<(double AgeHours, WeatherTrack Track, WeatherWorth Shares)> Others(ImmutableArray<ForecastSeries> runs)
        {
            var (first, last) = night.Grid.Cells(Dark!.Value);
            return
            [
                .. from run in runs
                   let seen = Seen(WeatherTrack.Deciding(run, night.Grid, first, last).CompletedBy(newest.Track))
                   select (UsableChance.AgeHours(series, run), seen.Track, seen.Shares),
            ];
        }
    }

    /// <summary>Whether each question came true.</summary>
    /// <param name="hours">The hours that came.</param>
    public ImmutableArray<bool> Came(ForecastSeries hours)
    {
        var worth = WeatherWorth.Of(WeatherTrack.Of(hours, night.Grid), night.Limits).Under(night.Dark);
        return [.. asked.Select((piece, i) => RunChoice.Best(piece.Night, worth)?.UsableMin >= Questions[i].NeedMin)];
    }

    private static ImmutableArray<SampleQuestion> QuestionsOf(NightEvidence night, bool isPooled)
    {
        if (night.Candidates.Count == 0) return [];
        var whole = new Interval(night.Candidates[0].Start, night.Candidates[^1].End);
        var own = new SampleQuestion(whole, night.Limits.UsableRunMin, true);
        return isPooled
            ?
            [
                own,
                .. SampleQuestions.Of(whole, night.Inputs.Night.DayOfYear)
                    .Where(asked => asked.Piece != own.Piece || asked.NeedMin != own.NeedMin)
                    .Select(asked => new SampleQuestion(asked.Piece, asked.NeedMin, false)),
            ]
            : [own];
    }

    private static List<Interval> Within(IReadOnlyList<Interval> windows, Interval piece) =>
    [
        .. from window in windows
           let start = Instant.Max(window.Start, piece.Start)
           let end = Instant.Min(window.End, piece.End)
           where start < end
           select new Interval(start, end),
    ];
}

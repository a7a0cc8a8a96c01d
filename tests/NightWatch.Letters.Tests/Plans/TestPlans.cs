using NightWatch.Planning.Camera;
using NightWatch.Planning.Conditions;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Verification;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Places;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Letters.Tests.Plans;

/// <summary>Hand-made plans for an invented photographer, Inés Robledo, and her invented corner of Teruel.</summary>
internal static class TestPlans
{
    /// <summary>A Friday.</summary>
    public static readonly LocalDate Night = new(2027, 6, 4);

    public static Watch CoreWatch { get; } = new()
    {
        Id = "threshing-floor-core",
        Subscriber = new Subscriber("Inés Robledo", "ines@robledo.example"),
        Site = new Site
        {
            Id = "threshing-floor",
            Name = "The threshing floor",
            Position = new GeoPosition(TestSky.LatitudeDeg, -0.93, 1340),
            Zone = TestSky.Madrid,
            AccessNotes = "Gravel track from the chapel; park below the wall, not on the stubble.",
        },
        Outing = new Outing { DriveMin = 70, SetUpMin = 75, FreeEvenings = [IsoDayOfWeek.Thursday, IsoDayOfWeek.Friday, IsoDayOfWeek.Saturday] },
    };

    public static Instant At(int hour, int minute = 0, int dayOffset = 0) => TestSky.Local(Night.PlusDays(dayOffset), hour, minute);

    /// <summary>A plan of a class; the run number stands for the forecast run, a bare one has no conditions.</summary>
    public static NightPlan Of(
        VerdictClass verdict, double probability = double.NaN, int run = 0, LocalDate? night = null, Watch? watch = null,
        ProbabilityBasis basis = ProbabilityBasis.LaggedRuns, bool hasForecast = true, bool bare = false, Instant? madeAt = null)
    {
        var date = night ?? Night;
        var of = watch ?? CoreWatch;
        var weather = TestWeather.Of(verdict);
        var zone = of.Site.Zone;
        var start = TestSky.Local(date.PlusDays(1), 0, 5, zone);
        var span = new Interval(start, TestSky.Local(date.PlusDays(1), 4, 20, zone));
        IReadOnlyList<ConditionStep> conditions = bare ? [] : [.. TestSky.Steps(date, zone).Select((s, i) => weather.On(s, i, hasForecast))];
        var sky = TestSky.Of(date, zone);
        var made = madeAt ?? TestSky.Local(date, 7, 0, zone);
        return new NightPlan
        {
            Watch = of,
            Night = date,
            MadeAt = made,
            Sky = sky,
            Verdict = new Verdict
            {
                Class = verdict,
                Run = span,
                Probability = new Probability(double.IsNaN(probability) ? weather.Probability : probability, basis, 4),
                Reasons = weather.Reasons(span),
            },
            Conditions = conditions,
            Sequence = verdict == VerdictClass.NoGo ? null : SequenceOf(span),
            Timeline = TestTimeline.Of(sky, verdict == VerdictClass.NoGo ? null : span),
            Packing = verdict == VerdictClass.NoGo ? [] : TestTimeline.Packing,
            Summary = weather.Summary(span),
            Forecast = hasForecast
                ? new ForecastOrigin(
                    "met-norway", "mixed", made - Duration.FromHours(2) + Duration.FromHours(run), made - Duration.FromMinutes(25),
                    new Attribution("Data from MET Norway", new Uri("https://api.met.no/"), "CC BY 4.0"))
                : null,
            LeaveBy = TestSky.Local(date, 18, 45, zone),
        };
    }

    private static Sequence SequenceOf(Interval span) => new()
    {
        Span = span,
        ExposureS = 15,
        IntervalS = 18,
        Shots = 850,
        PlaybackS = 35.4,
        PlaybackFps = 24,
        CommonPracticeLimitS = 30,
        TrailLimitS = 14.0,
        TrailPixels = 3.2,
        Iso = 3200,
        StorageGb = 25.5,
    };
}

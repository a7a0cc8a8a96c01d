using NightWatch.Planning.Camera;
using NightWatch.Planning.Conditions;
using NightWatch.Planning.Dew;
using NightWatch.Planning.Framing;
using NightWatch.Planning.Ground;
using NightWatch.Planning.Hazards;
using NightWatch.Planning.Power;
using NightWatch.Planning.Reasons;
using NightWatch.Planning.SkyBrightness;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Nights;
using NightWatch.Weather.Rain;
using NodaTime;

namespace NightWatch.Planning.Nights;

/// <summary>The whole evaluation of one watch and one night.</summary>
public sealed record NightPlan
{
    /// <summary>The watch that was planned.</summary>
    public required Watch Watch { get; init; }

    /// <summary>Local date of the evening.</summary>
    public required LocalDate Night { get; init; }

    /// <summary>The clock reading that it was planned at.</summary>
    public required Instant MadeAt { get; init; }

    /// <summary>The sky.</summary>
    public required NightSky Sky { get; init; }

    /// <summary>The decision.</summary>
    public required Verdict Verdict { get; init; }

    /// <summary>The night on a 5-minute grid, sunset to sunrise (or the whole span where they do not happen).</summary>
    public required IReadOnlyList<ConditionStep> Conditions { get; init; }

    /// <summary>Exposures, interval, shots, playback; null when there is no run.</summary>
    public required Sequence? Sequence { get; init; }

    /// <summary>Every clock time, in order.</summary>
    public required IReadOnlyList<TimelineEntry> Timeline { get; init; }

    /// <summary>The subject in the frame; null without a run, and for stars.</summary>
    public FramingPlan? Framing { get; init; }

    /// <summary>Dew and frost on the lens by the end of the run; null without a run.</summary>
    public LensPlan? Lens { get; init; }

    /// <summary>How bright the sky comes out in the frames; null without a sequence.</summary>
    public SkyLevelPlan? SkyLevel { get; init; }

    /// <summary>What one stands on; null without a run.</summary>
    public GroundPlan? Ground { get; init; }

    /// <summary>The rain of the last three days that the ground was followed from.</summary>
    public RainBefore RainBefore { get; init; } = RainBefore.Unknown;

    /// <summary>Battery energy; null without a sequence.</summary>
    public PowerPlan? Power { get; init; }

    /// <summary>What can hurt, worst first.</summary>
    public IReadOnlyList<Caution> Cautions { get; init; } = [];

    /// <summary>The site's moonless sky against the subject's path; null only in plans not made by <see cref="NightPlanner"/>.</summary>
    public SkyBrightnessPlan? SkyBrightness { get; init; }

    /// <summary>Steps of the programmed move; null without one or without a sequence.</summary>
    public MotionPlan? Motion { get; init; }

    /// <summary>Room on the cards; null without a sequence.</summary>
    public StoragePlan? Storage { get; init; }

    /// <summary>What to take this night.</summary>
    public IReadOnlyList<PackItem> Packing { get; init; } = [];

    /// <summary>Means over the run (over the astronomical night where there is no run), for the letters' summaries.</summary>
    public required NightSummary Summary { get; init; }

    /// <summary>Where the forecast came from; null: none.</summary>
    public ForecastOrigin? Forecast { get; init; }

    /// <summary>Where else figures came from: the second opinion, the ensemble. Their attribution stands beside the plan too.</summary>
    public IReadOnlyList<ForecastOrigin> OtherForecasts { get; init; } = [];

    /// <summary>When the car must leave for the run to be whole; null without a run.</summary>
    public required Instant? LeaveBy { get; init; }
}

/// <summary>The three summaries every letter carries.</summary>
public sealed record NightSummary
{
    /// <summary>
    /// A lens this near its dew point is not said to stay clear, K: screen temperatures are forecast to a degree or so (engineering
    /// choice).
    /// </summary>
    public const double ClosestToDewK = 0.5;

    /// <summary>Mean total cloud over the run, fraction.</summary>
    public required double? CloudMean { get; init; }

    /// <summary>Greatest total cloud in the run, fraction.</summary>
    public required double? CloudMost { get; init; }

    /// <summary>Mean low cloud, fraction; null: unknown.</summary>
    public double? LowCloudMean { get; init; }

    /// <summary>Mean medium cloud, fraction; null: unknown.</summary>
    public double? MediumCloudMean { get; init; }

    /// <summary>Mean high cloud, fraction; null: unknown.</summary>
    public double? HighCloudMean { get; init; }

    /// <summary>When dew or frost is expected on an unheated lens; null: not in the run.</summary>
    public required Instant? DewOnset { get; init; }

    /// <summary>Least margin of the lens above the dew (frost) point, K.</summary>
    public required double? LeastDewMarginK { get; init; }

    /// <summary>What settles is frost.</summary>
    public bool IsFrost { get; init; }

    /// <summary>The kit has a dew heater.</summary>
    public bool HasHeater { get; init; }

    /// <summary>When a heater should be on; null: none is needed.</summary>
    public Instant? HeaterOn { get; init; }

    /// <summary>When it settles in spite of the kit's heater; null: it does not.</summary>
    public Instant? HeatedOnset { get; init; }

    /// <summary>Illuminated fraction of the Moon's disc, geocentric.</summary>
    public required double MoonIlluminatedFraction { get; init; }

    /// <summary>When it rises and sets within the span, in order.</summary>
    public required IReadOnlyList<MoonTurn> MoonTurns { get; init; }

    /// <summary>It is up as the span begins.</summary>
    public required bool MoonIsUp { get; init; }

    /// <summary>Magnitudes by which it brightens the sky at the subject at most; null: the subject is not up while the Moon is.</summary>
    public required double? MoonBrighteningMag { get; init; }
}

namespace NightWatch.Planning.Sources;

/// <summary>
/// Where a figure comes from: a key to the formula, publication or convention, whose reference is spelled out when it is said.
/// </summary>
public enum Formula
{
    /// <summary>The feed's own values over the run.</summary>
    FeedValues,

    /// <summary>Times and values of the feeds' runs.</summary>
    FeedRuns,

    /// <summary>Windows of Sun and subject, less the watch's margins.</summary>
    SkyWindows,

    /// <summary>Sun's centre at −18°.</summary>
    AstronomicalTwilight,

    /// <summary>Krisciunas and Schaefer 1991.</summary>
    MoonLight,

    /// <summary>Walker 1977 under a measured zenith, and the gazetteer's towns.</summary>
    TownsUnderMeasuredZenith,

    /// <summary>Walker 1977 over a natural sky (Falchi et al. 2016), and the gazetteer's towns.</summary>
    TownsOverNaturalSky,

    /// <summary>The whole of a site's sky brightness, its zenith measured.</summary>
    MeasuredSky,

    /// <summary>The whole of a site's sky brightness, estimated.</summary>
    EstimatedSky,

    /// <summary>WMO's definition of fog.</summary>
    FogByVisibility,

    /// <summary>Ye and Chen 2013: skill of cloud forecasts by lead.</summary>
    CloudSkill,

    /// <summary>Gust factor in-land, WMO/TD-No. 1555.</summary>
    InlandGusts,

    /// <summary>Heat balance of the front element.</summary>
    LensHeatBalance,

    /// <summary>The same with all its parts, for the plan.</summary>
    LensPlan,

    /// <summary>Water balance of the ground.</summary>
    GroundWater,

    /// <summary>The same with all its parts, for the plan.</summary>
    GroundPlan,

    /// <summary>Gnomonic projection along the move.</summary>
    FrameProjection,

    /// <summary>The same with the stars' turn and the margin at the edges, for the plan.</summary>
    FramingPlan,

    /// <summary>Steps of a programmed move.</summary>
    MotionPlan,

    /// <summary>ISO 12232 exposure of the clear sky.</summary>
    SkyExposure,

    /// <summary>The same with all its parts, for the plan.</summary>
    SkyLevelPlan,

    /// <summary>Star trails, exposure and ISO.</summary>
    SequencePlan,

    /// <summary>Energy balance with cells derated for cold.</summary>
    BatteryEnergy,

    /// <summary>The same with its shares, for the plan.</summary>
    PowerPlan,

    /// <summary>The chance by a statistical model of the forecast runs, and the cost/loss ratio.</summary>
    ChanceModel,

    /// <summary>Frames times the file size, and what cards really take.</summary>
    CardRoom,

    /// <summary>30-30 rule, NOAA National Weather Service.</summary>
    ThunderRule,

    /// <summary>The same, beside the feed's probability.</summary>
    ThunderAndRule,

    /// <summary>Depths of moving water, US National Weather Service.</summary>
    FloodDepths,

    /// <summary>Wind chill and its table.</summary>
    WindChill,

    /// <summary>Heat index, Rothfusz 1990.</summary>
    HeatIndex,

    /// <summary>Beaufort 7 and 8.</summary>
    Beaufort,

    /// <summary>A road colder than the air (engineering choice).</summary>
    RoadIce,

    /// <summary>Fog on the road by visibility.</summary>
    RoadFog,

    /// <summary>Williamson and Feyer 2000.</summary>
    HoursAwake,

    /// <summary>Cell specifications; Jaguemont et al. 2016.</summary>
    ColdCells,

    /// <summary>WHO guidelines on carbon monoxide.</summary>
    CarbonMonoxide,
}

namespace NightWatch.Planning.Chance;

/// <summary>Which figures of a forecast are known, and so which coefficients apply.</summary>
public enum FigureSet
{
    /// <summary>Several runs or members, and the probability of rain.</summary>
    RunsAndRain,

    /// <summary>Several runs or members; no probability of rain.</summary>
    Runs,

    /// <summary>The newest run alone, and the probability of rain.</summary>
    NewestAndRain,

    /// <summary>The newest run alone; no probability of rain.</summary>
    Newest,
}

namespace NightWatch.Planning.Verification.Outcomes;

/// <summary>Who says what a night was like. In the order in which they are believed.</summary>
public enum OutcomeSource
{
    /// <summary>The photographer, who stood there.</summary>
    Debrief,

    /// <summary>Reports of an aerodrome near the site (METAR): somebody else's sky, and an automatic station sees no high cloud.</summary>
    Metar,

    /// <summary>The feed's own later runs, over hours that lay behind them: no observation, and kind to the feed that is judged.</summary>
    Analysis,
}

namespace NightWatch.Planning.Verification.Outcomes;

/// <summary>Who says what a night was like. In the order in which they are believed.</summary>
public enum OutcomeSource
{
    /// <summary>The photographer, who stood there.</summary>
    Debrief,

    /// <summary>Reports of an aerodrome near the site (METAR) that a person stands behind: somebody else's sky.</summary>
    Metar,

    /// <summary>The same where an instrument alone told an hour or more.</summary>
    AutomaticMetar,

    /// <summary>The feed's own later runs, over hours that lay behind them: no observation, and kind to the feed that is judged.</summary>
    Analysis,
}

namespace NightWatch.Words;

/// <summary>What the figures of a night's page stand on.</summary>
public enum NightBasis
{
    /// <summary>The answers of the feeds as they are kept now.</summary>
    KeptAnswers,

    /// <summary>The night is over: the answers behind the last look before its end.</summary>
    LastLook,

    /// <summary>
    /// The night is over and those answers are gone, or what they are judged by has changed: the verdict alone, as it was kept.
    /// </summary>
    VerdictAlone,

    /// <summary>The night is over and nobody looked at it: the sky alone.</summary>
    NeverLooked,
}

namespace NightWatch.Watchkeeping.Archives;

/// <summary>The prior that an archive is looked at with.</summary>
internal enum PriorChoice
{
    /// <summary>The one that comes with the program.</summary>
    Shipped,

    /// <summary>One that knows nothing: even chances until something is learnt.</summary>
    None,

    /// <summary>Refitted on the archive without the two months around each night.</summary>
    Blocks,
}

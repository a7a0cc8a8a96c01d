namespace NightWatch.Watchkeeping.Measuring;

/// <summary>The stages of the service's work, in the order that a night's data takes.</summary>
internal enum Stage
{
    /// <summary>A whole tick: everything below.</summary>
    Tick,

    /// <summary>Filling the due table.</summary>
    Schedule,

    /// <summary>Taking due items, and dropping the late ones.</summary>
    Claim,

    /// <summary>One subscriber's watches of one pass, from forecast to commit.</summary>
    Subscriber,

    /// <summary>The weather of one watch: from the store, or from a feed where one may be asked.</summary>
    Forecast,

    /// <summary>Reading one kept answer of a feed into its series.</summary>
    Parse,

    /// <summary>Sun, Moon and windows of one night.</summary>
    Sky,

    /// <summary>The plan of one night, its sky given.</summary>
    Plan,

    /// <summary>What to tell about one night.</summary>
    Policy,

    /// <summary>Alternatives and text of one letter.</summary>
    Render,

    /// <summary>The transaction that keeps verdicts, memories, letters and what is due next.</summary>
    Commit,

    /// <summary>A round of the outbox.</summary>
    Outbox,

    /// <summary>One letter handed to the mail server.</summary>
    Send,

    /// <summary>Old rows leaving.</summary>
    Retention,
}

namespace NightWatch.Pages.Operator;

/// <summary>A letter that was given up.</summary>
/// <param name="Id">Its row.</param>
/// <param name="Kind">"Outlook", ...</param>
/// <param name="To">The address, struck out but for its domain.</param>
/// <param name="At">When it was written.</param>
/// <param name="Until">Later it is of no use.</param>
/// <param name="Why">What the mail server said.</param>
/// <param name="CanGo">It can still be tried again.</param>
public sealed record DeadLetter(long Id, string Kind, string To, string At, string Until, string Why, bool CanGo);

/// <summary>A feed.</summary>
/// <param name="Id">"open-meteo".</param>
/// <param name="LastAnswer">"12 min ago", "never".</param>
/// <param name="LastDay">"48", and where the feed sets a limit a day "48, about 91 of its 10,000 calls a day".</param>
/// <param name="Hold">"at all until 18:42 UTC", "for 3 places, the last until ...", "no".</param>
public sealed record FeedLine(string Id, string LastAnswer, string LastDay, string Hold);

/// <summary>The operator's page.</summary>
/// <param name="Note">What was just done; null: nothing.</param>
/// <param name="Counts">Names and figures.</param>
/// <param name="Queue">Letters by state.</param>
/// <param name="Dead">Given up, newest first.</param>
/// <param name="Feeds">In the order of trust.</param>
/// <param name="Suppressed">Addresses that get no letters, shortened.</param>
public sealed record OperatorModel(
    string? Note,
    IReadOnlyList<(string Name, string Figure)> Counts,
    IReadOnlyList<(string State, long Letters)> Queue,
    IReadOnlyList<DeadLetter> Dead,
    IReadOnlyList<FeedLine> Feeds,
    IReadOnlyList<(string Address, string Why, string Since)> Suppressed);

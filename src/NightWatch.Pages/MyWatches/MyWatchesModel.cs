using NightWatch.Words;

namespace NightWatch.Pages.MyWatches;

/// <summary>A night to come as it was last judged.</summary>
/// <param name="Night">"Fri 4 Jun".</param>
/// <param name="Word">"GO", "MARGINAL", "NO-GO".</param>
/// <param name="Style">"go", "marginal", "nogo".</param>
/// <param name="Says">"82 % chance of a usable night, 23:40 to 03:10", what must be done first, and that no letters come where they do
/// not.</param>
/// <param name="Page">The night's page.</param>
/// <param name="Snooze">The page that stops its letters.</param>
/// <param name="IsSnoozed">No letters about it.</param>
public sealed record ComingNight(string Night, string Word, string Style, string Says, string Page, string Snooze, bool IsSnoozed);

/// <summary>A watch in the list.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Name">The place.</param>
/// <param name="Says">Coordinates and subject.</param>
/// <param name="State">Whether it looks: "looks every day" marked, "is paused", "rests until Fri 4 Jun 2027".</param>
/// <param name="IsOn">It looks.</param>
/// <param name="Today">The site's date, the earliest that a rest can end after.</param>
/// <param name="Season">Its dark calendar.</param>
/// <param name="Record">How its forecasts have held.</param>
/// <param name="Nights">To come, in order.</param>
public sealed record WatchItem(
    string Id,
    string Name,
    string Says,
    MarkedSentence State,
    bool IsOn,
    string Today,
    string Season,
    string Record,
    IReadOnlyList<ComingNight> Nights);

/// <summary>The list.</summary>
/// <param name="Address">The subscriber's address.</param>
/// <param name="Note">What was just done; null: nothing.</param>
/// <param name="Watches">By name.</param>
public sealed record MyWatchesModel(string Address, string? Note, IReadOnlyList<WatchItem> Watches);

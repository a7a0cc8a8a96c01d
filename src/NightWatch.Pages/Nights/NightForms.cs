using NightWatch.Planning.Verification.Outcomes;
using NodaTime;

namespace NightWatch.Pages.Nights;

/// <summary>The question of the morning after.</summary>
/// <param name="Site">Name of the place.</param>
/// <param name="Night">Local date of the evening.</param>
/// <param name="Said">What was answered before; null: nothing.</param>
/// <param name="Chosen">The answer whose link was followed; it stands out, and is given only by its button.</param>
/// <param name="Links">Where the form goes.</param>
public sealed record DebriefPageModel(string Site, LocalDate Night, NightOutcome? Said, NightOutcome? Chosen, NightPageLinks Links);

/// <summary>Whether letters come about one night.</summary>
/// <param name="Site">Name of the place.</param>
/// <param name="Night">Local date of the evening.</param>
/// <param name="IsSnoozed">None come.</param>
/// <param name="Links">Where the form goes.</param>
public sealed record SnoozePageModel(string Site, LocalDate Night, bool IsSnoozed, NightPageLinks Links);

/// <summary>Another night or place instead of one.</summary>
/// <param name="Site">Name of the place that falls through.</param>
/// <param name="Night">Its evening.</param>
/// <param name="ToSite">Name of the place to go to.</param>
/// <param name="ToNight">Its evening.</param>
/// <param name="Action">Where the button sends.</param>
/// <param name="ToLink">The chosen night's page.</param>
/// <param name="Links">Those of the night that falls through.</param>
public sealed record SwitchPageModel(string Site, LocalDate Night, string ToSite, LocalDate ToNight, string Action, string ToLink, NightPageLinks Links)
{
    /// <summary>What was done; null: it is only offered.</summary>
    public string? Says { get; init; }
}

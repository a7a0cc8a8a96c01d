using NightWatch.Planning.Verification.Outcomes;

namespace NightWatch.Pages.Nights;

/// <summary>The question of the morning after.</summary>
/// <param name="Heading">The night and its place.</param>
/// <param name="Said">What was answered before; null: nothing.</param>
/// <param name="Chosen">The answer whose link was followed; it stands out, and is given only by its button.</param>
/// <param name="Links">Where the form goes.</param>
public sealed record DebriefPageModel(string Heading, NightOutcome? Said, NightOutcome? Chosen, NightPageLinks Links);

/// <summary>Whether letters come about one night.</summary>
/// <param name="Heading">The night and its place.</param>
/// <param name="IsSnoozed">None come.</param>
/// <param name="Links">Where the form goes.</param>
public sealed record SnoozePageModel(string Heading, bool IsSnoozed, NightPageLinks Links);

/// <summary>Another night or place instead of one.</summary>
/// <param name="InsteadOf">The night and the place that fall through.</param>
/// <param name="GoingTo">The night and the place to go to.</param>
/// <param name="Button">What the button says.</param>
/// <param name="Action">Where the button sends.</param>
/// <param name="ToLink">The chosen night's page.</param>
/// <param name="Links">Those of the night that falls through.</param>
public sealed record SwitchPageModel(string InsteadOf, string GoingTo, string Button, string Action, string ToLink, NightPageLinks Links)
{
    /// <summary>What was done; null: it is only offered.</summary>
    public string? Says { get; init; }
}

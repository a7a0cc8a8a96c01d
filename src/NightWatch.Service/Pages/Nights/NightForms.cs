using NightWatch.Planning.Verification.Outcomes;
using NodaTime;

namespace NightWatch.Service.Pages.Nights;

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

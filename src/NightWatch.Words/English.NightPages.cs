using NightWatch.Planning.Reasons;
using NodaTime;

namespace NightWatch.Words;

// The page of one night and what can be done from it.
public sealed partial class English
{
    /// <inheritdoc/>
    public string? Of(NightBasis basis) => basis switch
    {
        NightBasis.LastLook => "As it stood at the last look before the night ended; nothing here knows what came after.",
        NightBasis.VerdictAlone =>
            "The verdict as it was kept. The forecast behind it is no longer there, or the watch has changed since, so weather, times and "
            + "frames are left out.",
        NightBasis.NeverLooked => "NightWatch did not look at this night, so only the sky is shown.",
        _ => null,
    };

    /// <inheritdoc/>
    public string NightSnoozed(bool isOver) => isOver
        ? "Snoozed: no more letters about this night."
        : "Snoozed: no more letters about this night, unless you ask for them again at the foot of this page.";

    /// <inheritdoc/>
    public MarkedSentence NoLettersWhileResting(LocalDate? until, Speech speech) =>
        new($"This watch {Rests(until, speech)}: no letters come about this night, unless you take it up again on ", "your watches", ".");

    /// <inheritdoc/>
    public string WithinLimits(IReadOnlyList<Factor> factors) => $"Within the limits: {string.Join(", ", factors.Select(Within))}";

    /// <inheritdoc/>
    public string PageWritten(Instant at, Speech speech) =>
        $"Written {speech.Clock.Full(at)} from kept forecasts. Clock times are local at the site.";

    /// <inheritdoc/>
    public string NightAt(LocalDate evening, string site, Speech speech) => Capital(NightWithin(evening, site, speech));

    /// <inheritdoc/>
    public string InsteadOf(LocalDate evening, string site, Speech speech) => $"{speech.Clock.Date(evening)} at {site}";

    /// <inheritdoc/>
    public string GoingTo(LocalDate evening, string site, Speech speech) => $"{speech.Clock.Date(evening)} to {site}";

    /// <inheritdoc/>
    public string SwitchTo(LocalDate evening, Speech speech) => $"Switch to {speech.Clock.Date(evening)}";

    private static string Rests(LocalDate? until, Speech speech) =>
        until is { } date ? $"rests until {speech.Clock.Date(date)}" : "is paused";
}

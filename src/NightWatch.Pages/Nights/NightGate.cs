using NightWatch.Pages.Links;
using NightWatch.Planning.Watches;
using NodaTime;
using NodaTime.Text;

namespace NightWatch.Pages.Nights;

/// <summary>Opens a night's address: a date that has a page, and the signature for just that night.</summary>
internal sealed class NightGate(LinkGate gate, IClock clock)
{
    /// <summary>Nights so far from today have no page: nothing is kept of them, and the ephemeris has an end.</summary>
    private const int MostDays = 1000;

    /// <summary>The watch and the night; null: the link opens nothing.</summary>
    public async Task<(Watch Watch, LocalDate Night)?> OpenAsync(string watchId, string night, string? key, CancellationToken stop) =>
        DateOf(night) is { } date && await gate.NightAsync(watchId, date, key, stop) is { } watch ? (watch, date) : null;

    /// <summary>A date near enough; null: none.</summary>
    public LocalDate? DateOf(string? text) =>
        LocalDatePattern.Iso.Parse(text ?? "").TryGetValue(default, out var date)
        && Math.Abs((long)Period.DaysBetween(clock.GetCurrentInstant().InUtc().Date, date)) <= MostDays
            ? date
            : null;
}

using NodaTime;

namespace NightWatch.Words;

// Dates, lengths and ages.
public sealed partial class English
{
    private const string DateOfYearPattern = "d MMM uuuu";

    private const string DateInYearPattern = "d MMM";

    /// <inheritdoc/>
    public string DatePattern => "ddd d MMM uuuu";

    /// <inheritdoc/>
    public string MonthPattern => "MMM";

    /// <inheritdoc/>
    public string MonthOfYearPattern => "MMM uuuu";

    /// <inheritdoc/>
    public string FullMonthPattern => "MMMM uuuu";

    /// <inheritdoc/>
    public string Dates(LocalDate from, LocalDate to)
    {
        var end = to.ToString(DateOfYearPattern, Culture);
        return from == to ? end : from.Year != to.Year ? $"{from.ToString(DateOfYearPattern, Culture)}–{end}" : $"{Before(to, from)}–{end}";
    }

    /// <inheritdoc/>
    public string TableLength(long hours, long minutes) => string.Create(Culture, $"{hours} h {minutes:00} min");

    /// <inheritdoc/>
    public string Ago(Duration age) => $"{Age(age)} ago";

    /// <summary>"90 s", "45 min", "3 h 05 min", "3 days".</summary>
    private string Age(Duration age)
    {
        if (age < Duration.FromMinutes(2)) return string.Create(Culture, $"{Math.Max(0, age.TotalSeconds):0} s");
        var minutes = (long)Math.Round(age.TotalMinutes);
        return minutes < 120 ? $"{minutes} min"
            : minutes < 48 * 60 ? TableLength(minutes / 60, minutes % 60)
            : string.Create(Culture, $"{age.TotalDays:0} days");
    }

    /// <summary>"3–9 Jun", "28 May–3 Jun": within one season, whose year is known.</summary>
    private string DatesInSeason(LocalDate from, LocalDate to)
    {
        var end = to.ToString(DateInYearPattern, Culture);
        return from == to ? end : $"{Before(to, from)}–{end}";
    }

    /// <summary>The first of two dates, without its month where the second says it.</summary>
    private string Before(LocalDate to, LocalDate from) =>
        from.ToString(from.Year == to.Year && from.Month == to.Month ? "%d" : DateInYearPattern, Culture);

    /// <summary>"1 night", "2 nights".</summary>
    private static string Many(long count, string one, string? many = null) => count == 1 ? $"1 {one}" : $"{count} {many ?? one + "s"}";
}

using NodaTime;

namespace NightWatch.Words;

// Dates, lengths and ages.
public partial interface ILanguage
{
    /// <summary>NodaTime pattern of a date with its weekday and year.</summary>
    string DatePattern { get; }

    /// <summary>NodaTime pattern of a month's short name.</summary>
    string MonthPattern { get; }

    /// <summary>NodaTime pattern of the same with its year.</summary>
    string MonthOfYearPattern { get; }

    /// <summary>NodaTime pattern of a month's full name with its year.</summary>
    string FullMonthPattern { get; }

    /// <summary>From one date to another with the year, as short as it can be understood.</summary>
    string Dates(LocalDate from, LocalDate to);

    /// <summary>A length of hours and minutes, as wide as any other in a column.</summary>
    string TableLength(long hours, long minutes);

    /// <summary>How long ago, in the largest unit that still tells something.</summary>
    string Ago(Duration age);
}

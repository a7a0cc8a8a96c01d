using System.Globalization;
using NightWatch.Sky.Tables;
using NodaTime;
using NodaTime.Text;

namespace NightWatch.Sky.Time;

/// <summary>TAI − UTC as published by the IERS (Bulletin C); the last entry holds until the table is extended.</summary>
public static class LeapSeconds
{
    private static readonly (Instant From, int Seconds)[] Entries =
        [.. PublishedTable.Rows("leap-seconds.tsv", 28, "019b6cb9e5818e826984f16726ae38f890831ff98585507bcb300fcfb5e27623")
            .Select(row => (
                LocalDatePattern.Iso.Parse(row[0]).Value.AtMidnight().InUtc().ToInstant(),
                int.Parse(row[1], CultureInfo.InvariantCulture)))];

    /// <summary>1972-01-01, when UTC began to differ from TAI by whole seconds.</summary>
    public static Instant Begin => Entries[0].From;

    /// <summary>TAI − UTC, seconds.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Before 1972.</exception>
    public static int TaiMinusUtc(Instant at)
    {
        for (var i = Entries.Length - 1; i >= 0; i--)
        {
            if (at >= Entries[i].From) return Entries[i].Seconds;
        }

        throw new ArgumentOutOfRangeException(nameof(at), at, "Accepted: 1972-01-01 and later.");
    }
}

using System.Globalization;
using NodaTime;
using NodaTime.Text;

namespace NightWatch.Planning.Judging;

/// <summary>Figures as the sentences say them: metric, invariant, local clock times.</summary>
internal static class Said
{
    private static readonly LocalTimePattern Pattern = LocalTimePattern.CreateWithInvariantCulture("HH:mm");

    /// <summary>Local clock time, to the nearest minute.</summary>
    public static string Clock(Instant at, DateTimeZone zone) => Pattern.Format((at + Duration.FromSeconds(30)).InZone(zone).TimeOfDay);

    /// <summary>"from 22:10 to 02:40".</summary>
    public static string Span(Interval span, DateTimeZone zone) => $"from {Clock(span.Start, zone)} to {Clock(span.End, zone)}";

    /// <summary>"12 %".</summary>
    public static string Percent(double fraction) => string.Create(CultureInfo.InvariantCulture, $"{100 * fraction:0} %");

    /// <summary>"12 % to 18 %"; one figure where both are said alike.</summary>
    public static string Percents(double least, double most) => Percent(least) == Percent(most) ? Percent(most) : $"{Percent(least)} to {Percent(most)}";

    /// <summary>"2 h 10 min", "45 min".</summary>
    public static string Length(Duration length)
    {
        var minutes = (long)Math.Round(length.TotalMinutes);
        return minutes < 60 ? string.Create(CultureInfo.InvariantCulture, $"{minutes} min")
            : minutes % 60 == 0 ? string.Create(CultureInfo.InvariantCulture, $"{minutes / 60} h")
            : string.Create(CultureInfo.InvariantCulture, $"{minutes / 60} h {minutes % 60} min");
    }

    /// <summary>One decimal, none where it is zero.</summary>
    public static string Number(double value) => value.ToString("0.#", CultureInfo.InvariantCulture);

    /// <summary>One decimal, always.</summary>
    public static string OneDecimal(double value) => value.ToString("0.0", CultureInfo.InvariantCulture);
}

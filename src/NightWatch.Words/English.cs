using System.Globalization;
using NightWatch.Planning.Reasons;
using NightWatch.Planning.Verdicts;
using NodaTime;

namespace NightWatch.Words;

/// <summary>English, with the true minus sign; days before months, clocks of 24 hours.</summary>
public sealed partial class English : ILanguage
{
    private English()
    {
    }

    /// <summary>The one.</summary>
    public static English Instance { get; } = new();

    /// <inheritdoc/>
    public CultureInfo Culture { get; } = MakeCulture();

    /// <inheritdoc/>
    public string ClockPattern => "HH:mm";

    /// <inheritdoc/>
    public string DayPattern => "ddd d MMM";

    /// <inheritdoc/>
    public string DayInMonthPattern => "ddd d";

    /// <inheritdoc/>
    public string Unknown => "unknown";

    /// <inheritdoc/>
    public string Deference =>
        "Official warnings always come first: follow your local weather service, park and emergency authorities. This is guidance, not a " +
        "warning service.";

    /// <inheritdoc/>
    public string FromTo(string start, string end) => $"{start} to {end}";

    /// <inheritdoc/>
    public string Length(long hours, long minutes) =>
        hours == 0 ? $"{minutes} min" : minutes == 0 ? $"{hours} h" : $"{hours} h {minutes} min";

    /// <inheritdoc/>
    public string Of(VerdictClass verdict) => verdict switch
    {
        VerdictClass.Go => "GO",
        VerdictClass.Marginal => "MARGINAL",
        _ => "NO-GO",
    };

    /// <inheritdoc/>
    public string Of(Severity severity) => severity switch
    {
        Severity.Ok => "ok",
        Severity.Caution => "caution",
        _ => "stop",
    };

    /// <inheritdoc/>
    public string Of(Factor factor) => factor switch
    {
        Factor.RainProbability => "Chance of rain",
        Factor.Length => "Good frames",
        Factor.Dew => "Dew on the lens",
        Factor.Glow => "Site and towns",
        Factor.Frame => "Subject in the frame",
        Factor.SkyLevel => "Sky in the frame",
        Factor.Power => "Batteries",
        Factor.Storage => "Cards",
        Factor.Disagreement => "Second forecast",
        Factor.Forecast => "Forecast itself",
        Factor.Chance => "Chance of a usable night",
        _ => factor.ToString(),
    };

    /// <inheritdoc/>
    public string Within(VerdictClass verdict) => Of(verdict).ToLowerInvariant();

    /// <inheritdoc/>
    public string Within(Factor factor) => Of(factor).ToLowerInvariant();

    private static string Span(Interval span, Speech speech) => $"from {speech.Clock.Time(span.Start)} to {speech.Clock.Time(span.End)}";

    /// <summary>"12 % to 18 %"; one figure where both are said alike.</summary>
    private static string Percents(double least, double most, Speech speech) =>
        speech.Percent(least) == speech.Percent(most) ? speech.Percent(most) : $"{speech.Percent(least)} to {speech.Percent(most)}";

    // The culture's own data are not on every machine (globalization is invariant), and English needs only one sign.
    private static CultureInfo MakeCulture()
    {
        var culture = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        culture.NumberFormat.NegativeSign = "−";
        return CultureInfo.ReadOnly(culture);
    }
}

using NightWatch.Planning.Hazards;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Reasons;
using NightWatch.Planning.Sources;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Verification;
using NightWatch.Planning.Verification.Calls;
using NightWatch.Planning.Watches;
using NodaTime;

namespace NightWatch.Words;

/// <summary>What is said to one reader: in a language, in their units, by the clock of one site.</summary>
/// <param name="language">The language.</param>
/// <param name="units">The reader's units.</param>
/// <param name="zone">The site's zone.</param>
public sealed class Speech(ILanguage language, UnitSystem units, DateTimeZone zone)
{
    /// <summary>The language.</summary>
    public ILanguage Language { get; } = language;

    /// <summary>Figures with their units.</summary>
    public UnitWords Units { get; } = new(units, language);

    /// <summary>Clock times and dates.</summary>
    public ClockWords Clock { get; } = new(zone, language);

    /// <summary>To the subscriber of a watch.</summary>
    public static Speech To(Watch watch)
    {
        ArgumentNullException.ThrowIfNull(watch);
        return new Speech(English.Instance, watch.Letters.Units, watch.Site.Zone);
    }

    /// <summary>In metric units, for documents and tables.</summary>
    public static Speech Metric(DateTimeZone zone) => new(English.Instance, UnitSystem.Metric, zone);

    /// <summary>To readers of whom nothing is known: metric, by UTC.</summary>
    public static Speech ToAnybody { get; } = Metric(DateTimeZone.Utc);

    /// <summary>
    /// What a reason found; where it is a hazard that stands alone, with the closing sentence that the authorities have the last
    /// word.
    /// </summary>
    public string Whole(Reason reason) =>
        reason is { IsHazard: true } and not Recorded ? Closed(Of(reason)) : Of(reason);

    /// <summary>What a reason found.</summary>
    public string Of(Reason reason) => Language.Of(reason, this);

    /// <summary>What would mend a reason; null if nothing would, or nothing need.</summary>
    public string? Fix(Reason reason)
    {
        ArgumentNullException.ThrowIfNull(reason);
        return reason is Recorded old ? old.Fix : reason.Mend is { } mend ? Language.Of(mend, this) : null;
    }

    /// <summary>Where a reason's figures come from, without a full stop.</summary>
    public string? Source(Reason reason)
    {
        ArgumentNullException.ThrowIfNull(reason);
        return reason is Recorded old ? old.Source : reason.Formula is { } formula ? Of(formula) : null;
    }

    /// <summary>A reference, without a full stop.</summary>
    public string Of(Formula formula) => Language.Of(formula);

    /// <summary>A caution.</summary>
    public string Of(Caution caution) => Language.Of(caution, this);

    /// <summary>Cautions, the last one closed by the sentence that the authorities have the last word.</summary>
    public string Closed(string cautions) => $"{cautions} {Language.Deference}";

    /// <summary>A verdict: "GO", "MARGINAL", "NO-GO".</summary>
    public string Of(VerdictClass verdict) => Language.Of(verdict);

    /// <summary>"ok", "caution", "stop".</summary>
    public string Of(Severity severity) => Language.Of(severity);

    /// <summary>A factor as a heading.</summary>
    public string Of(Factor factor) => Language.Of(factor);

    /// <summary>A factor within a sentence.</summary>
    public string Within(Factor factor) => Language.Within(factor);

    /// <summary>"82 % chance of a usable night", and what it was found from.</summary>
    public string Likely(Probability chance) => Language.Likely(chance);

    /// <summary>What came of calls like the one of this night.</summary>
    public string Of(LikeCalls like) => Language.Of(like, this);

    /// <summary>What happens at a clock time.</summary>
    public string Title(TimelineEntry entry) => Language.Title(entry);

    /// <summary>Why then; null where the title says it.</summary>
    public string? Why(TimelineEntry entry) => Language.Why(entry, this);

    /// <summary>A thing to take.</summary>
    public string Of(PackItem item) => Language.Of(item, this);

    /// <summary>The cloud of the run.</summary>
    public string Cloud(NightSummary summary) => Language.Cloud(summary, this);

    /// <summary>Dew.</summary>
    public string Dew(NightSummary summary) => Language.Dew(summary, this);

    /// <summary>The Moon.</summary>
    public string Moon(NightSummary summary) => Language.Moon(summary, this);

    /// <summary>"12 %".</summary>
    public string Percent(double fraction) => string.Create(Language.Culture, $"{100 * fraction:0} %");

    /// <summary>"12°".</summary>
    public string Degrees(double degrees) => string.Create(Language.Culture, $"{degrees:0}°");

    /// <summary>"4.5 h", for a column.</summary>
    public string Hours(Duration length) => string.Create(Language.Culture, $"{length.TotalHours:0.0} h");

    /// <summary>At most one decimal, for figures whose unit every reader shares.</summary>
    public string Number(double value) => value.ToString("0.#", Language.Culture);

    /// <summary>One decimal, always.</summary>
    public string OneDecimal(double value) => value.ToString("0.0", Language.Culture);
}

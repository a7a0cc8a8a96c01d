using NightWatch.Planning.Nights;
using NightWatch.Planning.Verification;

namespace NightWatch.Words;

// Cloud, dew and Moon in one sentence each, and how a chance was found.
public sealed partial class English
{
    /// <summary>Less than this would be said as 0.0 mag.</summary>
    private const double LeastSaidMag = 0.05;

    /// <summary>Less of a layer is not worth naming.</summary>
    private const double LeastSaidLayer = 0.1;

    /// <inheritdoc/>
    public string Cloud(NightSummary summary, Speech speech)
    {
        ArgumentNullException.ThrowIfNull(summary);
        if (summary is not { CloudMean: { } mean, CloudMost: { } most }) return "Cloud is not known.";
        var words = mean switch
        {
            <= 0.05 => "Clear",
            <= 0.2 => "Mostly clear",
            <= 0.45 => "Broken cloud",
            <= 0.8 => "Mostly cloudy",
            _ => "Overcast",
        };
        var text = $"{words}: {speech.Percent(mean)} on average, {speech.Percent(most)} at most";
        (string Name, double? Mean)[] layers =
        [("low", summary.LowCloudMean), ("medium", summary.MediumCloudMean), ("high", summary.HighCloudMean)];
        var told = layers
            .Where(layer => layer.Mean >= LeastSaidLayer)
            .Select(layer => $"{layer.Name} {speech.Percent(layer.Mean!.Value)}")
            .ToArray();
        return told.Length == 0 ? $"{text}." : $"{text} ({string.Join(", ", told)}).";
    }

    /// <inheritdoc/>
    public string Dew(NightSummary summary, Speech speech)
    {
        ArgumentNullException.ThrowIfNull(summary);
        if (summary.LeastDewMarginK is not { } margin) return "Dew cannot be told: temperature, humidity, cloud or wind is not known.";
        var deposit = Deposit(summary.IsFrost);
        if (summary.DewOnset is not { } onset)
        {
            return margin < NightSummary.ClosestToDewK
                ? $"{deposit} is close: the lens comes within {Apart(NightSummary.ClosestToDewK, speech)} of it, and forecasts err by more."
                : $"No dew expected: the lens stays {Apart(margin, speech)} above its dew point.";
        }

        return !summary.HasHeater ? $"{deposit} on an unheated lens from {speech.Clock.Time(onset)}; no heater in the kit."
            : summary.HeatedOnset is { } late
                ? $"{deposit} from {speech.Clock.Time(onset)}; the heater holds it off until {speech.Clock.Time(late)}."
            : $"{deposit} on an unheated lens from {speech.Clock.Time(onset)}; heater on by " +
                $"{speech.Clock.Time(summary.HeaterOn ?? onset)}.";
    }

    /// <inheritdoc/>
    public string Moon(NightSummary summary, Speech speech)
    {
        ArgumentNullException.ThrowIfNull(summary);
        var light = summary.MoonBrighteningMag switch
        {
            null => "",
            >= LeastSaidMag and var most => $"; it brightens the sky at the subject by up to {speech.OneDecimal(most)} mag",
            > 0 => "; it adds next to no light",
            _ => "; it adds no light",
        };
        var moves = summary.MoonTurns.Count > 0
            ? string.Join(", ", summary.MoonTurns.Select(turn => $"{(turn.Rises ? "rises" : "sets")} {speech.Clock.Time(turn.At)}"))
            : summary.MoonIsUp ? "up throughout" : "down throughout";
        return $"Moon {speech.Percent(summary.MoonIlluminatedFraction)} lit, {moves}{light}.";
    }

    /// <inheritdoc/>
    public string Of(Probability chance)
    {
        var found = chance.Basis switch
        {
            ProbabilityBasis.SkyAlone => "The sky alone decides; no weather can change it.",
            _ when chance.IsBlind => "No forecast: even chances.",
            ProbabilityBasis.EnsembleMembers when chance.Usable is { } usable =>
                $"{usable} of {chance.Count} runs, the newest forecast and the members of its ensemble, give a usable night; a model of " +
                "this feed weighs them with the forecast's own figures.",
            ProbabilityBasis.LaggedRuns when chance.Usable is { } usable =>
                $"{usable} of the last {chance.Count} runs of the forecast give a usable night; a model of this feed weighs them with " +
                "the forecast's own figures.",
            ProbabilityBasis.LeadTimePrior => "By a model of this feed from the newest forecast's own figures over the night.",
            ProbabilityBasis.Came => "The night has come; this is what it was.",
            _ => "",
        };
        var lowered = chance.IsLowered ? " Lowered because a second feed disagrees." : "";
        var learnt = chance is { CalibratedBy: { } nights, Uncalibrated: { } before }
            ? string.Create(
                Culture,
                $" The model has learnt from {nights} nights of this feed at this lead (version {chance.CalibrationVersion}); without " +
                $"them it would say {before * 100:0} %.")
            : "";
        return $"{found}{lowered}{learnt}";
    }

    /// <inheritdoc/>
    public string Likely(Probability chance)
    {
        var basis = chance.Basis switch
        {
            ProbabilityBasis.EnsembleMembers => $"from {chance.Count} runs of the ensemble",
            ProbabilityBasis.LaggedRuns => $"from the last {chance.Count} forecast runs",
            ProbabilityBasis.LeadTimePrior => "from the newest forecast",
            ProbabilityBasis.Came => "from the hours that came",
            _ => "from the sky alone",
        };
        return string.Create(Culture, $"{Math.Round(100 * chance.Value):0} % chance of a usable night ({basis})");
    }
}

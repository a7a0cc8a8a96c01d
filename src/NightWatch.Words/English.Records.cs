using NightWatch.Planning.Chance;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Verification.Calls;
using NightWatch.Planning.Verification.Outcomes;
using NodaTime;

namespace NightWatch.Words;

// What came of earlier calls, in words that promise no more than the count can bear.
public sealed partial class English
{
    /// <inheritdoc/>
    public string Of(LikeCalls like, Speech speech)
    {
        ArgumentNullException.ThrowIfNull(like);
        var which = $"({Within(like.Said)}, {Ahead(like.LeadNights)})";
        var (hits, count) = (like.Right.Hits, like.Right.Count);
        // A marginal night is no promise that could be right or wrong.
        var what = like.Said == VerdictClass.Marginal
            ? $"Nights like this one {which} came usable {hits} of {count} times"
            : $"Calls like this one {which} were right {hits} of {count} times";
        return $"{what}: {ByChance(like.Right)}";
    }

    /// <inheritdoc/>
    public string LastCalls(Rate right) =>
        $"The last call before the night was right {right.Hits} of {right.Count} times: {ByChance(right)}";

    /// <inheritdoc/>
    public string Ahead(int? leadNights) => leadNights switch
    {
        null => "on the last look before the night",
        0 => "on the day",
        1 => "1 night ahead",
        var nights => $"{nights} nights ahead",
    };

    /// <inheritdoc/>
    public string AheadRow(int leadNights) => Capital(Ahead(leadNights));

    /// <inheritdoc/>
    public string CountOf(Rate rate) => rate.Count == 0 ? "none yet" : $"{rate.Hits} of {rate.Count}";

    /// <inheritdoc/>
    public string ShareOf(Rate rate) => rate.Share is { } share
        ? string.Create(Culture, $"{share * 100:0} % ({rate.Interval.Low * 100:0} to {rate.Interval.High * 100:0})")
        : "";

    /// <inheritdoc/>
    public MarkedSentence CalledNights(bool saidOn, bool usable, int nights) => new("", $"{nights}", (saidOn, usable, nights) switch
    {
        (true, true, 1) => " good night",
        (true, true, _) => " good nights",
        (true, false, 1) => " drive for nothing",
        (true, false, _) => " drives for nothing",
        (false, true, 1) => " night lost",
        (false, true, _) => " nights lost",
        (false, false, _) => " rightly at home",
    });

    /// <inheritdoc/>
    public string TooFewToJudge(int nights, int needed) =>
        $"{Many(nights, "night is", "nights are")} not enough evidence to judge probabilities by; {needed} are needed.";

    /// <inheritdoc/>
    public string NothingRecorded => "Nothing is recorded yet: the record begins with the first look at a night.";

    /// <inheritdoc/>
    public string RecordBasis(
        LocalDate from, LocalDate to, int nights, int known, IReadOnlyList<(OutcomeSource Source, int Nights)> sources, Speech speech)
    {
        var by = string.Join(", ", sources.Select(source => $"{source.Nights} {By(source.Source)}"));
        return $"{FromTo(speech.Clock.Date(from), speech.Clock.Date(to))}: {Many(nights, "night")} that the sky allowed, "
            + $"{known} of them with a known outcome"
            + (by.Length > 0 ? $": {by}." : ".");
    }

    /// <inheritdoc/>
    public string EveningsNotFree(int nights) =>
        nights == 1
            ? "1 night more lay on an evening that is not free: it is in the table of every call, and counts neither as right nor as lost."
            : $"{nights} nights more lay on evenings that are not free: they are in the table of every call, and count neither as right " +
                "nor as lost.";

    /// <inheritdoc/>
    public string NightsNotTold(int nights) => nights == 1
        ? "Of 1 night more a source saw too little to tell what it was: it counts neither as right nor as wrong."
        : $"Of {nights} nights more a source saw too little to tell what they were: they count neither as right nor as wrong.";

    /// <inheritdoc/>
    public string NightsOneSided(int nights) => nights == 1
        ? "1 night more is told by an aerodrome alone: an aerodrome tells of spoilt nights and hardly of a good one, so it is not scored."
        : $"{nights} nights more are told by an aerodrome alone: an aerodrome tells of spoilt nights and hardly of a good one, "
            + "so they are not scored.";

    /// <inheritdoc/>
    public string SourceName(OutcomeSource source) => source switch
    {
        OutcomeSource.Debrief => "Your own word",
        OutcomeSource.Metar => "Aerodrome, by eye",
        OutcomeSource.AutomaticMetar => "Aerodrome, automatic",
        OutcomeSource.Analysis => "Later runs",
        _ => throw new ArgumentOutOfRangeException(nameof(source), source, "Accepted: one of the sources."),
    };

    /// <inheritdoc/>
    public string ToldPart(ToldPart part) => part switch
    {
        Planning.Verification.Outcomes.ToldPart.Usable => "told usable",
        Planning.Verification.Outcomes.ToldPart.Unusable => "told not usable",
        Planning.Verification.Outcomes.ToldPart.NotTold => "could not tell",
        Planning.Verification.Outcomes.ToldPart.Silent => "not a word",
        _ => throw new ArgumentOutOfRangeException(nameof(part), part, "Accepted: one of the parts."),
    };

    /// <inheritdoc/>
    public string SourceTallies(IReadOnlyList<SourceTally> tallies)
    {
        ArgumentNullException.ThrowIfNull(tallies);
        return string.Join(" ", tallies.Select(tally => $"{SourceName(tally.Source)}: {Many(tally.Nights, "night")}, {Parts(tally)}."));

        string Parts(SourceTally tally) =>
            string.Join(", ", Enum.GetValues<ToldPart>().Select(part => $"{tally.Of(part)} {ToldPart(part)}"));
    }

    /// <inheritdoc/>
    public string? Caveat(OutcomeSource source) =>
        source switch
        {
            OutcomeSource.Analysis =>
                "Later runs are no observation: they err as the forecast errs, and are kind to it. Your own word counts before them, so "
                    + "answer the question on the morning after.",
            OutcomeSource.Metar => "An aerodrome reports its own sky, and its shallow fog and fog patches are taken for none.",
            OutcomeSource.AutomaticMetar =>
                "An automatic station sees no cloud above 3.8 km: it can tell that low cloud, fog or rain spoilt a night, but not that a " +
                "night was clear.",
            _ => null,
        };

    /// <inheritdoc/>
    public string Of(LearningProof proof)
    {
        ArgumentNullException.ThrowIfNull(proof);
        if (proof.Nights < LearningProof.FewestNights)
        {
            return string.Create(
                Culture,
                $"Not used: {proof.Nights} nights with a known outcome are not enough evidence; {LearningProof.FewestNights} are needed.");
        }

        var figures = string.Create(
            Culture,
            $"Brier score {proof.LearntBrier:0.0000} by what had been learnt before each look, {proof.StartBrier:0.0000} by the prior " +
            $"alone, over {proof.Nights} nights");
        return proof.IsProven ? $"Used: {figures}." : $"Not used: {figures}; no better than chance may give.";
    }

    /// <inheritdoc/>
    public string Of(LearntChance learnt, string? place)
    {
        ArgumentNullException.ThrowIfNull(learnt);
        ChanceModel[] models = [.. (place is null ? learnt.Learning.KnownPlaces : [place]).Select(learnt.Learning.ModelFor)];
        var weighs =
            models.Length == 0
                ? ""
                : string.Create(
                    Culture,
                    $" The forecast weighs {Range(models.Select(model => model.Weight), "0.00", 1)} and the climate, " +
                    $"{Range(models.Select(model => model.Climate), "0", 100)} % usable nights, the rest.");
        var sources =
            learnt.Sources.Count == 0
                ? ""
                : $" Outcomes by {string.Join(", ", learnt.Sources.Select(source => $"{source.Key} {source.Value}"))}.";
        return $"{Of(learnt.Proof)}{weighs}{sources}";
    }

    private static string By(OutcomeSource source) => source switch
    {
        OutcomeSource.Debrief => "by your own word",
        OutcomeSource.Metar => "by an aerodrome nearby",
        OutcomeSource.AutomaticMetar => "by an automatic station nearby",
        OutcomeSource.Analysis => "by later runs of the forecast",
        _ => throw new ArgumentOutOfRangeException(nameof(source), source, "Accepted: one of the sources."),
    };

    /// <summary>"81 %, and by chance anything from 60 to 92 %."</summary>
    private string ByChance(Rate rate) => string.Create(
        Culture, $"{rate.Share * 100:0} %, and by chance anything from {rate.Interval.Low * 100:0} to {rate.Interval.High * 100:0} %.");

    private string Range(IEnumerable<double> values, string format, double times)
    {
        string[] ends = [.. ((double[])[values.Min(), values.Max()]).Select(value => (value * times).ToString(format, Culture)).Distinct()];
        return string.Join(" to ", ends);
    }
}

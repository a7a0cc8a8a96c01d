using NightWatch.Planning.Chance;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Verification.Calls;

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
        return string.Create(
            Culture,
            $"{what}: {like.Right.Share * 100:0} %, and by chance anything from {like.Right.Interval.Low * 100:0} to {like.Right.Interval.High * 100:0} %.");
    }

    /// <inheritdoc/>
    public string Ahead(int? leadNights) => leadNights switch
    {
        null => "on the last look before the night",
        0 => "on the day",
        1 => "1 night ahead",
        var nights => $"{nights} nights ahead",
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
            $"Brier score {proof.LearntBrier:0.0000} by what had been learnt before each look, {proof.StartBrier:0.0000} by the prior alone, over {proof.Nights} nights");
        return proof.IsProven ? $"Used: {figures}." : $"Not used: {figures}; no better than chance may give.";
    }

    /// <inheritdoc/>
    public string Of(LearntChance learnt, string? place)
    {
        ArgumentNullException.ThrowIfNull(learnt);
        ChanceModel[] models = [.. (place is null ? learnt.Learning.KnownPlaces : [place]).Select(learnt.Learning.ModelFor)];
        var weighs = models.Length == 0 ? "" : string.Create(
            Culture,
            $" The forecast weighs {Range(models.Select(model => model.Weight), "0.00", 1)} and the climate, {Range(models.Select(model => model.Climate), "0", 100)} % usable nights, the rest.");
        var sources = learnt.Sources.Count == 0 ? "" : $" Outcomes by {string.Join(", ", learnt.Sources.Select(source => $"{source.Key} {source.Value}"))}.";
        return $"{Of(learnt.Proof)}{weighs}{sources}";
    }

    private string Range(IEnumerable<double> values, string format, double times)
    {
        string[] ends = [.. ((double[])[values.Min(), values.Max()]).Select(value => (value * times).ToString(format, Culture)).Distinct()];
        return string.Join(" to ", ends);
    }
}

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
}

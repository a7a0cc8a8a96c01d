using System.Globalization;
using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Verification.Calls;

namespace NightWatch.Words;

/// <summary>What came of earlier calls, in words that promise no more than the count can bear.</summary>
public static class RecordWords
{
    /// <summary>"Calls like this one (go, 2 nights ahead) were right 17 of 21 times: 81 %, and by chance anything from 60 to 92 %."</summary>
    public static string Of(LikeCalls like)
    {
        ArgumentNullException.ThrowIfNull(like);
        var which = $"({Class(like.Said)}, {Ahead(like.LeadNights)})";
        // A marginal night is no promise that could be right or wrong.
        var what = like.Said == VerdictClass.Marginal
            ? $"Nights like this one {which} came usable {like.Right.Hits} of {like.Right.Count} times"
            : $"Calls like this one {which} were right {like.Right.Hits} of {like.Right.Count} times";
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{what}: {like.Right.Share * 100:0} %, and by chance anything from {like.Right.Interval.Low * 100:0} to {like.Right.Interval.High * 100:0} %.");
    }

    /// <summary>"go", "marginal", "no-go".</summary>
    public static string Class(VerdictClass verdict) => VerdictWords.Of(verdict).ToLowerInvariant();

    /// <summary>"on the day", "1 night ahead", "2 nights ahead"; null: "on the last look before the night".</summary>
    public static string Ahead(int? leadNights) => leadNights switch
    {
        null => "on the last look before the night",
        0 => "on the day",
        1 => "1 night ahead",
        var nights => $"{nights} nights ahead",
    };
}

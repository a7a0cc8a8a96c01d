using NodaTime;

namespace NightWatch.Words;

// How the service does, on its status page and on the operator's.
public sealed partial class English
{
    /// <inheritdoc/>
    public string NoDatabase => "does not answer";

    /// <inheritdoc/>
    public string NothingSaid => "nothing";

    /// <inheritdoc/>
    public string ServiceState(bool isWell) => isWell ? "The service does well" : "Something is amiss";

    /// <inheritdoc/>
    public string LastTick(Duration? age, bool failed)
    {
        var last = age is { } known ? Ago(known) : "none yet since the start";
        return failed ? $"{last}; it failed and is tried again" : last;
    }

    /// <inheritdoc/>
    public string Waiting(long count, Duration? oldest) => oldest is { } age ? $"{Count(count)}, the oldest for {Age(age)}" : Count(count);

    /// <inheritdoc/>
    public string Answered(Duration? age) => age is { } known ? $"answered {Ago(known)}" : "has not answered yet";

    /// <inheritdoc/>
    public string Learnt(string feedId, int leadNights, string why) => $"{feedId}, {Ahead(leadNights)}: {why}";

    /// <inheritdoc/>
    public string AgoOrNever(Duration? age) => age is { } known ? Ago(known) : "never";

    /// <inheritdoc/>
    public string Watches(long all, long resting) => $"{Count(all)}, {Count(resting)} of them resting";

    /// <inheritdoc/>
    public string UnreadableRows(IReadOnlyList<string> rows, int more) => rows.Count == 0
        ? "none was met"
        : $"{string.Join(", ", rows)}{(more > 0 ? $" and {Count(more)} more" : "")}; 'nightwatch check' says why";

    /// <inheritdoc/>
    public string OldestLetter(Duration? age) => age is { } known ? $"written {Ago(known)}" : "none waits";

    /// <inheritdoc/>
    public string StrangersLetters(long count, long most) =>
        count < most ? $"{Count(count)} of at most {Count(most)}" : $"{Count(count)}: as many as may be, so more are refused";

    /// <inheritdoc/>
    public string FeedsDay(long answers, (long Calls, long Most)? budget) => budget is var (calls, most)
        ? $"{Count(answers)}, about {Count(calls)} of its {Count(most)} calls a day"
        : Count(answers);

    /// <inheritdoc/>
    public string HeldBack(int? places, Instant? until) => (places, until) switch
    {
        (_, null) => "no",
        (null, { } end) => $"at all until {InstantText.Minute(end)} UTC",
        ({ } some, { } end) => $"for {Many(some, "place")}, the last until {InstantText.Minute(end)} UTC",
    };

    private string Count(long count) => count.ToString("#,0", Culture);
}

using NodaTime;

namespace NightWatch.Words;

// How the service does, on its status page and on the operator's.
public partial interface ILanguage
{
    /// <summary>Heading of the status page.</summary>
    string ServiceState(bool isWell);

    /// <summary>When the service last looked for what is due.</summary>
    /// <param name="age">How long ago; null: never since it started.</param>
    /// <param name="failed">That look failed.</param>
    string LastTick(Duration? age, bool failed);

    /// <summary>How many things wait, and for how long the oldest has.</summary>
    string Waiting(long count, Duration? oldest);

    /// <summary>When a feed last answered; null: never.</summary>
    string Answered(Duration? age);

    /// <summary>That the database does not answer.</summary>
    string NoDatabase { get; }

    /// <summary>What was learnt of a feed at one lead.</summary>
    string Learnt(string feedId, int leadNights, string why);

    /// <summary>How long ago something last was; null: never.</summary>
    string AgoOrNever(Duration? age);

    /// <summary>How many watches there are.</summary>
    string Watches(long all, long resting);

    /// <summary>Which kept rows cannot be read.</summary>
    /// <param name="rows">Some of their names.</param>
    /// <param name="more">How many more there are.</param>
    string UnreadableRows(IReadOnlyList<string> rows, int more);

    /// <summary>The age of the oldest letter that waits; null: none does.</summary>
    string OldestLetter(Duration? age);

    /// <summary>Letters that strangers caused within an hour, of at most so many.</summary>
    string StrangersLetters(long count, long most);

    /// <summary>Answers of a feed within a day.</summary>
    /// <param name="answers">How many.</param>
    /// <param name="budget">The calls that they took and those that the feed allows a day; null: it sets no limit.</param>
    string FeedsDay(long answers, (long Calls, long Most)? budget);

    /// <summary>Whether a feed is held back.</summary>
    /// <param name="places">For so many places; null: for all.</param>
    /// <param name="until">Until then, the longest; null: it is not held back.</param>
    string HeldBack(int? places, Instant? until);

    /// <summary>That the mail server gave no reason.</summary>
    string NothingSaid { get; }
}

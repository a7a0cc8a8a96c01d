using NightWatch.Planning.Nights;
using NodaTime;

namespace NightWatch.Words;

// What came of a reader's wish about a watch or a night of theirs.
public partial interface ILanguage
{
    /// <summary>Whether letters come about a night.</summary>
    string LettersAbout(LocalDate evening, string site, bool come, Speech speech);

    /// <summary>That a watch cannot rest until a day that is not ahead.</summary>
    string DayIsNotAhead(LocalDate day, Speech speech);

    /// <summary>That a watch rests until a day.</summary>
    string WatchRests(string watchId, LocalDate until, Speech speech);

    /// <summary>That a night was taken instead of another.</summary>
    string Switched(LocalDate evening, string site, Instant leaveBy, Speech speech);

    /// <summary>That a night cannot be taken instead of itself.</summary>
    string SameNight { get; }

    /// <summary>That a night of another's watch cannot be taken.</summary>
    string NotOneSubscriber { get; }

    /// <summary>That a night of a paused watch cannot be taken.</summary>
    string WatchIsPaused(string watchId);

    /// <summary>That a night which is off cannot be taken, and why it is.</summary>
    string IsOffByNow(NightPlan plan, Speech speech);

    /// <summary>That it is too late for a night.</summary>
    string TooLateFor(LocalDate evening, string site, Speech speech);

    /// <summary>That a night is past.</summary>
    string NightIsPast(LocalDate evening, Speech speech);

    /// <summary>That no letters come from a watch.</summary>
    string NoLettersFrom(string watchId);

    /// <summary>That no digest comes.</summary>
    string NoDigest { get; }

    /// <summary>That what is kept of a night cannot be read.</summary>
    string NightUnreadable { get; }

    /// <summary>That a night is being looked at just now.</summary>
    string NightIsBusy { get; }
}

using NightWatch.Sky.Places;
using NodaTime;

namespace NightWatch.Words;

// Letters about no single night.
public partial interface ILanguage
{
    /// <summary>Asks whether an address wants letters. Figures only: nothing that a stranger typed.</summary>
    /// <param name="place">Where the watch looks; null: not said.</param>
    /// <param name="until">When the link ends.</param>
    /// <param name="now">When it is written.</param>
    /// <param name="speech">Language, units and clock of the reader.</param>
    NoticeWords Confirmation(GeoPosition? place, Instant until, Instant now, Speech speech);

    /// <summary>Brings the link that signs in.</summary>
    /// <param name="until">When the link ends.</param>
    /// <param name="now">When it is written.</param>
    /// <param name="speech">Language, units and clock of the reader.</param>
    NoticeWords SignIn(Instant until, Instant now, Speech speech);

    /// <summary>Says nothing but that letters arrive.</summary>
    /// <param name="from">Who sends.</param>
    /// <param name="now">When it is written.</param>
    NoticeWords Test(string from, Instant now);
}

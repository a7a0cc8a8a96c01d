using NightWatch.Planning.Nights;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Season;
using NodaTime;
using NodaTime.Calendars;

namespace NightWatch.Letters.Notices;

/// <summary>What the week's digest is written from: one letter a subscriber and week, for those who asked for it.</summary>
/// <remarks>
/// It comes every week, also when no night is on: its reader asked for it, and a week without it would leave open whether nothing is on
/// or nobody looks. Only where there is neither a night nor a dark season to speak of (midsummer far north) is there silence.
/// </remarks>
public sealed record DigestDraft
{
    /// <summary>The nights of a digest: tonight and the six after it.</summary>
    public const int Nights = 7;

    /// <summary>How far it looks for the next dark run: to the end of the lunation after this one.</summary>
    public const int SeasonNights = 45;

    /// <summary>Whose watches; the first one's units and clock are the letter's.</summary>
    public required IReadOnlyList<Watch> Watches { get; init; }

    /// <summary>Every watch's coming nights.</summary>
    public required IReadOnlyList<NightPlan> Plans { get; init; }

    /// <summary>The dark calendar of each watch, by watch id.</summary>
    public required IReadOnlyDictionary<string, DarkCalendar> Seasons { get; init; }

    /// <summary>It is the reader's first letter after an upgrade, and says what is new.</summary>
    public bool TellsNews { get; init; }

    /// <summary>The clock reading.</summary>
    public required Instant Now { get; init; }

    /// <summary>There is a night or a dark run to speak of.</summary>
    public bool SaysSomething => Plans.Any(plan => plan.Verdict.Run is not null) || Seasons.Values.Any(season => season.Ranked.Count > 0);

    internal LocalDate Today => Now.InZone(Watches[0].Site.Zone).Date;

    /// <summary>One a week: the week of ISO 8601 is part of the key, so that no change of the weekday brings a second one.</summary>
    internal string Key
    {
        get
        {
            var rule = WeekYearRules.Iso;
            return FormattableString.Invariant(
                $"Digest|{Watches[0].Subscriber.Key()}|{rule.GetWeekYear(Today)}-W{rule.GetWeekOfWeekYear(Today):00}");
        }
    }

    /// <summary>The next morning: then the outlooks and timelines have more to say.</summary>
    internal Instant NotAfter => Now + Duration.FromHours(24);

    internal LocalDate LastEvening => Today.PlusDays(Nights - 1);
}

using NightWatch.Sky.Ephemeris;
using NightWatch.Sky.Moon;
using NightWatch.Sky.Nights;
using NightWatch.Sky.Places;
using NightWatch.Sky.Subjects;
using NodaTime;

namespace NightWatch.Sky.Season;

/// <summary>The dark calendar of a place: what the sky allows night by night, without weather.</summary>
public sealed class DarkCalendar
{
    /// <summary>The most nights of one calendar: ten years.</summary>
    public const int MostNights = 3660;

    private DarkCalendar(IReadOnlyList<DarkNight> nights)
    {
        Nights = nights;
        Ranked =
        [
            .. nights
                .Where(night => night.IsUsable)
                .OrderByDescending(Worth)
                .ThenBy(night => night.Sky.Moon.IlluminatedFraction)
                .ThenBy(night => night.Night),
        ];
        Lunations = LunationsOf(nights);
    }

    /// <summary>All nights, in order.</summary>
    public IReadOnlyList<DarkNight> Nights { get; }

    /// <summary>
    /// The usable nights, the best first: by the good time of their best piece to the minute, then by less Moon, then by date.
    /// </summary>
    public IReadOnlyList<DarkNight> Ranked { get; }

    /// <summary>The nights by lunation, full Moon to full Moon, in order.</summary>
    public IReadOnlyList<DarkLunation> Lunations { get; }

    /// <summary>Computes a calendar.</summary>
    /// <param name="position">The place.</param>
    /// <param name="zone">Its zone.</param>
    /// <param name="from">Local date of the first evening; the last night is in 2100 at the latest.</param>
    /// <param name="nights">How many, 1 to 3660.</param>
    /// <param name="subject">What the camera is for.</param>
    /// <param name="minAltitudeDeg">Least geometric altitude of the subject, degrees.</param>
    /// <param name="horizon">The skyline, for the subject. Null for none.</param>
    /// <param name="ephemeris">Shared positions; null makes its own.</param>
    /// <param name="offerOf">What a night's sky offers; null: its shooting windows.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number of nights, a night or an altitude that is not accepted.</exception>
    public static DarkCalendar Of(
        GeoPosition position,
        DateTimeZone zone,
        LocalDate from,
        int nights,
        Subject subject,
        double minAltitudeDeg = 10,
        HorizonProfile? horizon = null,
        SkyEphemeris? ephemeris = null,
        Func<NightSky, NightOffer>? offerOf = null)
    {
        if (nights is < 1 or > MostNights) throw new ArgumentOutOfRangeException(nameof(nights), nights, "Accepted: 1 to 3660.");
        var shared = ephemeris ?? new SkyEphemeris();
        return new(
        [
            .. ParallelEnumerable.Range(0, nights).AsOrdered().Select(day =>
            {
                var sky = NightSky.Of(position, zone, from.PlusDays(day), subject, minAltitudeDeg, horizon, shared);
                return DarkNight.Of(sky, (offerOf ?? NightOffer.OfWindows)(sky));
            }),
        ]);
    }

    private static long Worth(DarkNight night) => (long)Math.Round(night.LongestRun.TotalMinutes);

    // A night belongs to the new Moon whose two full Moons enclose its middle.
    private static List<DarkLunation> LunationsOf(IReadOnlyList<DarkNight> nights)
    {
        var lunations = new List<DarkLunation>();
        var rest = 0;
        while (rest < nights.Count)
        {
            var middle = Middle(nights[rest]);
            var full = MoonPhases.Next(PhaseName.Full, middle).At;
            var newMoon = MoonPhases.Previous(PhaseName.New, full).At;
            var own = nights.Skip(rest).TakeWhile(night => Middle(night) <= full).ToList();
            lunations.Add(new(newMoon, own, NightSpell.BestOf(own)));
            rest += own.Count;
        }

        return lunations;
    }

    private static Instant Middle(DarkNight night) => night.Sky.Span.Start + night.Sky.Span.Duration / 2;
}

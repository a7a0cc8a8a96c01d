using NightWatch.Planning.Watches;
using NodaTime;

namespace NightWatch.Planning.Reasons;

/// <summary>What would make a reason ok, in figures. Closed: these cases are all there are.</summary>
/// <remarks>
/// The first half is what the reader can do before the night: what a plan needs. The second is another sky, night or forecast.
/// </remarks>
public abstract record Mend
{
    private Mend()
    {
    }

    /// <summary>A dew heater of so many watts, on from an instant; null: the one there is, stronger.</summary>
    public sealed record Heater(double Watts, Instant? From) : Mend;

    /// <summary>More label energy behind the heater, Wh.</summary>
    public sealed record HeaterEnergy(double Wh) : Mend;

    /// <summary>More label energy in packs, Wh.</summary>
    public sealed record Packs(double Wh) : Mend;

    /// <summary>Packs kept warm, or power from the car.</summary>
    public sealed record WarmPacks : Mend;

    /// <summary>Another card of at least so many GB, or a longer interval.</summary>
    public sealed record Card(double Gb) : Mend;

    /// <summary>
    /// Another end of the move (null: another heading), another start, or a shorter sequence where the subject is in at all.
    /// </summary>
    public sealed record OtherAim(Heading? End, Instant? Start, bool OrShorter) : Mend;

    /// <summary>A lower ISO or a shorter exposure.</summary>
    public sealed record LessExposure : Mend;

    /// <summary>Boots, a ground sheet and firm spots; or a drying day.</summary>
    public sealed record FirmSpots : Mend;

    /// <summary>A shorter run accepted, or a date with a longer one.</summary>
    public sealed record ShorterRun : Mend;

    /// <summary>Mean cloud of at most a fraction over so many minutes, known for all of them.</summary>
    public sealed record CloudAtMost(double Mean, double Minutes) : Mend;

    /// <summary>Mean cloud below a fraction for at least so many minutes.</summary>
    public sealed record CloudBelow(double Mean, double Minutes) : Mend;

    /// <summary>Fog on less than a fraction of the run, or a site above it.</summary>
    public sealed record FogBelow(double Share) : Mend;

    /// <summary>Gusts below, m/s, or a place in the lee.</summary>
    public sealed record GustsBelow(double GustMps) : Mend;

    /// <summary>A mean wind below, m/s, or a place in the lee.</summary>
    public sealed record MeanWindBelow(double WindMps) : Mend;

    /// <summary>Dry for at least so many minutes.</summary>
    public sealed record DryFor(double Minutes) : Mend;

    /// <summary>A probability below a fraction through the run.</summary>
    public sealed record ChanceBelow(double Probability) : Mend;

    /// <summary>A run with the Moon down, or a night nearer new Moon.</summary>
    /// <param name="Turns">When it sets and rises, in order.</param>
    public sealed record MoonDown(IReadOnlyList<MoonTurn> Turns) : Mend;

    /// <summary>A site whose sky at the subject is as dark as so many V mag/arcsec², or another subject.</summary>
    public sealed record DarkerSite(double Mag) : Mend;

    /// <summary>A date on which the subject is up in the dark.</summary>
    public sealed record OtherDate : Mend;

    /// <summary>A night without the hazard, or the reader's own judgement on the spot.</summary>
    public sealed record NightWithoutIt : Mend;

    /// <summary>The same forecast so many hours ahead or less.</summary>
    public sealed record NearerNight(double AheadH) : Mend;

    /// <summary>A forecast, or a record, that is missing.</summary>
    public sealed record Knowledge(Missing Of) : Mend;

    /// <summary>What is not known.</summary>
    public enum Missing
    {
        /// <summary>Any forecast for the night.</summary>
        Forecast,

        /// <summary>A fresh one.</summary>
        Fresh,

        /// <summary>Values by the hour.</summary>
        Hourly,

        /// <summary>Cloud.</summary>
        Cloud,

        /// <summary>Temperature, dew point, cloud and wind; a heater would do as well.</summary>
        Dew,

        /// <summary>Fog or visibility.</summary>
        Fog,

        /// <summary>Amount of precipitation.</summary>
        Rain,

        /// <summary>Its probability.</summary>
        RainChance,

        /// <summary>Probability of thunder.</summary>
        Thunder,

        /// <summary>Wind.</summary>
        Wind,

        /// <summary>The rain of the last three days and until the night.</summary>
        RainBefore,

        /// <summary>A second feed that agrees.</summary>
        Agreement,
    }
}

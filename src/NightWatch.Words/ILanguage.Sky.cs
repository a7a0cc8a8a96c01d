using NightWatch.Sky.Band;
using NightWatch.Sky.Meteors;
using NightWatch.Sky.Moon;
using NightWatch.Sky.Nights;
using NightWatch.Sky.Places;
using NightWatch.Sky.Season;
using NodaTime;

namespace NightWatch.Words;

// What the sky alone does over a place, night by night.
public partial interface ILanguage
{
    /// <summary>A night and its place, as a heading.</summary>
    string SkyHeading(GeoPosition position, NightSky sky, Speech speech);

    /// <summary>An event of the sky.</summary>
    string Of(SkyEvent what);

    /// <summary>The subject's greatest altitude, degrees.</summary>
    string SubjectHighest(double altitudeDeg);

    /// <summary>Why there is no sunset or no sunrise; null: there are both.</summary>
    string? Of(SunState sun);

    /// <summary>Why the subject does not set or does not rise; null: it does both, or there is none.</summary>
    string? Of(SubjectState subject);

    /// <summary>How much of the Moon is lit and where it is at solar midnight.</summary>
    string MoonAtMidnight(MoonEvents moon);

    /// <summary>How far the Moon is, and its next phase.</summary>
    string MoonAway(MoonFromEarth moon, MoonPhase next, Speech speech);

    /// <summary>How the galactic band stands.</summary>
    /// <param name="arch">The band.</param>
    /// <param name="visible">What can be seen of it.</param>
    /// <param name="isFirst">At the beginning of the longest window; else at its end.</param>
    /// <param name="speech">Language, units and clock of the reader.</param>
    string Of(BandArch arch, IReadOnlyList<BandStretch> visible, bool isFirst, Speech speech);

    /// <summary>A meteor shower that is active.</summary>
    string Of(ActiveShower shower);

    /// <summary>An eclipse of the Moon over the place.</summary>
    string Of(EclipseOverSite eclipse, Speech speech);

    /// <summary>Where the Moon or the subject passes the skyline.</summary>
    string Of(SkylineCrossing crossing, bool isMoon, Speech speech);

    /// <summary>A dark window; null: there is none.</summary>
    string DarkWindow(Interval? window, Speech speech);

    /// <summary>A window with the subject above its least altitude, degrees; null: there is none.</summary>
    string SubjectWindow(Interval? window, double leastAltitudeDeg, Speech speech);

    /// <summary>A window that is dark with the subject up; null: there is none.</summary>
    string ShootingWindow(Interval? window, Speech speech);

    /// <summary>What there is none of, in a table.</summary>
    string NoneCell { get; }

    /// <summary>Windows in a table, one after the other; at least one.</summary>
    string WindowsCell(IReadOnlyList<Interval> windows, Speech speech);

    /// <summary>A night's rank in a season, from 1.</summary>
    string Rank(int rank);

    /// <summary>The eclipse of a night of the season, which must have one.</summary>
    string SeasonEclipse(DarkNight night, Speech speech);

    /// <summary>A new Moon and the best nights around it.</summary>
    string Of(DarkLunation lunation, Speech speech);
}

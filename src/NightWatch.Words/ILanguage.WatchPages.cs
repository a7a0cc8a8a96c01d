using NightWatch.Planning.Verdicts;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Places;
using NightWatch.Sky.Season;
using NightWatch.Sky.Subjects;
using NodaTime;

namespace NightWatch.Words;

// Watches, their places and the nights ahead of them.
public partial interface ILanguage
{
    /// <summary>Whether a watch looks, the state marked.</summary>
    /// <param name="rests">It does not look.</param>
    /// <param name="until">The first day that it looks again; null: it is paused for good, or looks.</param>
    /// <param name="speech">Language, units and clock of the reader.</param>
    MarkedSentence WatchState(bool rests, LocalDate? until, Speech speech);

    /// <summary>The same in a word or two, for a table.</summary>
    string WatchStateCell(bool rests, LocalDate? until, Speech speech);

    /// <summary>A place by its coordinates as they can be typed, and what the camera there is for.</summary>
    string PlaceAndSubject(string coordinates, Subject subject);

    /// <summary>A night in a list, beside its class: chance and run, and what must be done first; of a hazard, that one.</summary>
    string InShort(Verdict verdict, Speech speech);

    /// <summary>Something said of a night, and that no letters come about it.</summary>
    string WithoutLetters(string said);

    /// <summary>The nights ahead with a dark window that is long enough.</summary>
    /// <param name="count">How many, at least one.</param>
    /// <param name="looked">Of so many.</param>
    /// <param name="least">The length that is enough.</param>
    /// <param name="best">The one with the longest window.</param>
    /// <param name="speech">Language, units and clock of the reader.</param>
    string NightsAhead(int count, int looked, Duration least, DarkNight best, Speech speech);

    /// <summary>That none of so many nights has one.</summary>
    string NoNightAhead(int looked, Duration least, Speech speech);

    /// <summary>That the first night that has one lies far ahead.</summary>
    string OutOfSeason(DarkNight first, Duration least, Speech speech);

    /// <summary>How much of the Moon is lit.</summary>
    string MoonLit(double fraction);

    /// <summary>How many fields of a form are wrong, at least one.</summary>
    string FieldsToMend(int count);

    /// <summary>How bright a sky is taken for until it is measured, magnitudes a square arcsecond; null: the place is not known.</summary>
    string SkyTaken((double Mag, double DarkestMag, double BrightestMag)? zenith);

    /// <summary>Tells a town from others of its name.</summary>
    string Town(string zoneId, long people, double latitudeDeg, double longitudeDeg);

    /// <summary>A skyline in words.</summary>
    string Skyline(IReadOnlyList<HorizonPoint> points);

    /// <summary>That an address has as many watches as it may.</summary>
    string WatchesAreEnough(int most, bool isSignedIn);

    /// <summary>What counts as usable in a season.</summary>
    /// <param name="subject">What the camera is for.</param>
    /// <param name="limits">Whose altitude, minutes and darkness count.</param>
    /// <param name="speech">Language, units and clock of the reader.</param>
    string WhatIsUsable(Subject subject, Limits limits, Speech speech);

    /// <summary>That a lunation has no usable night.</summary>
    string NoUsableNight { get; }

    /// <summary>Evenings from one to another, by their weekdays; one where both are the same.</summary>
    string Evenings(LocalDate from, LocalDate to, Speech speech);

    /// <summary>Usable hours of an evening, the figure marked; the rest is for readers who hear the page.</summary>
    MarkedSentence UsableHours(Duration usable, bool isBest);
}

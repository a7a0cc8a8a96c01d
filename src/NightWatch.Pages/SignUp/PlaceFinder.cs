using NightWatch.Places;
using NightWatch.Places.Notations;
using NightWatch.Words;

namespace NightWatch.Pages.SignUp;

/// <summary>A place to choose.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Says">"Africa/Johannesburg, 10,500 people, 34.42° S 19.23° E": tells it from others of the name.</param>
/// <param name="Place">Its coordinates as a field holds them.</param>
public sealed record PlaceChoice(string Name, string Says, string Place);

/// <summary>What came of a text that names a place. Closed.</summary>
public abstract record FoundPlace
{
    private FoundPlace()
    {
    }

    public sealed record Point(double LatitudeDeg, double LongitudeDeg, double? ElevationM, string Name) : FoundPlace;

    public sealed record Several(IReadOnlyList<PlaceChoice> Choices) : FoundPlace;

    public sealed record None(string Why) : FoundPlace;
}

/// <summary>From what a person types to a place, by notation and by gazetteer.</summary>
internal static class PlaceFinder
{
    private const int MostChoices = 10;

    /// <param name="text">What was typed.</param>
    /// <param name="name">What the place is to be called, where that is known already.</param>
    public static FoundPlace Find(string text, string name)
    {
        switch (PlaceText.Read(text))
        {
            case PlaceReading.Point point:
                return new FoundPlace.Point(point.LatitudeDeg, point.LongitudeDeg, point.ElevationM, name);
            case PlaceReading.Wrong wrong:
                return new FoundPlace.None(wrong.Why);
            case PlaceReading.ShortCode { Near: "" } code:
                return new FoundPlace.None(
                    $"{code.Code} is the end of a code and needs a town near it; accepted: {code.Code} and the town's name, or the whole " +
                    "code.");
            case PlaceReading.ShortCode code:
                return Choose(
                    code.Near,
                    place =>
                        OpenLocationCode.Decode(OpenLocationCode.Recover(code.Code, place.LatitudeDeg, place.LongitudeDeg)) is var area
                            ? (area.LatitudeDeg, area.LongitudeDeg)
                            : default);
            case PlaceReading.Name words:
                return Choose(words.Text, place => (place.LatitudeDeg, place.LongitudeDeg));
            default:
                throw new InvalidOperationException("A notation without an answer.");
        }
    }

    private static FoundPlace Choose(string name, Func<PopulatedPlace, (double LatitudeDeg, double LongitudeDeg)> where)
    {
        var places = GazetteerIndex.Bundled.Find(name, MostChoices);
        if (places.Count == 0)
            return new FoundPlace.None("No town of that name is in our list; accepted: another town near it, or coordinates.");
        return new FoundPlace.Several([
            .. places.Select(place =>
            {
                var (latitude, longitude) = where(place);
                return new PlaceChoice(
                    place.Name,
                    Speech.ToAnybody.Language.Town(
                        ZoneMap.Bundled.At(place.LatitudeDeg, place.LongitudeDeg), place.Population, latitude, longitude),
                    FormattableString.Invariant($"{latitude:0.#####}, {longitude:0.#####}"));
            }),
        ]);
    }
}

namespace NightWatch.Places.Notations;

/// <summary>Reads whatever a person types or pastes to say where a place is.</summary>
public static class PlaceText
{
    /// <summary>Longest text that is looked at, characters.</summary>
    public const int Longest = 2000;

    /// <summary>Reads a text: a geo: URI, a map link, an Open Location Code, degrees in any common form, or else a name.</summary>
    /// <param name="text">As typed or pasted.</param>
    public static PlaceReading Read(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var trimmed = text.Trim();
        if (trimmed.Length == 0)
            return new PlaceReading.Wrong(
                "Nothing is written; accepted: a place's name, coordinates, a geo: address, a map link or an Open Location Code.");
        if (trimmed.Length > Longest) return new PlaceReading.Wrong($"The text is too long; accepted: up to {Longest} characters.");
        if (trimmed.StartsWith("geo:", StringComparison.OrdinalIgnoreCase)) return GeoUri.Read(trimmed);
        if (trimmed.Contains("://", StringComparison.Ordinal)) return MapLink.Read(trimmed);
        return OpenLocationCodeText.Read(trimmed) ?? DegreesText.Read(trimmed) ?? new PlaceReading.Name(trimmed);
    }

    /// <summary>A point, or why it is none.</summary>
    internal static PlaceReading Checked(double latitudeDeg, double longitudeDeg, double? elevationM, string notation)
    {
        if (!(latitudeDeg is >= -90 and <= 90))
        {
            var hint =
                longitudeDeg is >= -90 and <= 90 && latitudeDeg is >= -180 and <= 180
                    ? " Perhaps the longitude stands first: write the latitude first."
                    : "";
            return new PlaceReading.Wrong(
                FormattableString.Invariant($"The latitude, {latitudeDeg:0.#####}, is out of range; accepted: 90 south to 90 north.{hint}")
            );
        }

        return longitudeDeg is >= -180 and <= 180
            ? new PlaceReading.Point(latitudeDeg, longitudeDeg, elevationM, notation)
            : new PlaceReading.Wrong(
                FormattableString.Invariant($"The longitude, {longitudeDeg:0.#####}, is out of range; accepted: 180 west to 180 east."));
    }
}

using CsCheck;
using NightWatch.Places.Notations;

namespace NightWatch.Places.Tests.Notations;

public sealed class PlaceTextTests
{
    // Worked examples of RFC 5870, "A Uniform Resource Identifier for Geographic Locations ('geo' URI)", the sections named.
    [Theory]
    [InlineData("geo:13.4125,103.8667", 13.4125, 103.8667, null)] // 1
    [InlineData("geo:48.2010,16.3695,183", 48.2010, 16.3695, 183.0)] // 6.1
    [InlineData("geo:48.198634,16.371648;crs=wgs84;u=40", 48.198634, 16.371648, null)] // 6.1
    [InlineData("geo:90,-22.43;crs=WGS84", 90.0, 0.0, null)] // 3.4.4, and 3.4.2 on the pole
    [InlineData("geo:66,30;u=6.500;FOo=this%2dthat", 66.0, 30.0, null)] // 3.4.4
    [InlineData("GEO:22.300;22.300", null, null, null)] // comma missing
    [InlineData("geo:66.0,30;crs=moon-2011", null, null, null)] // 3.4.1: another reference system
    [InlineData("geo:0,0?q=-24.7553,15.2905(Salt pan)", -24.7553, 15.2905, null)] // as phones share a point; common practice, no source
    public void A_geo_address_reads_as_its_standard_says(string text, double? latitude, double? longitude, double? elevation) =>
        Holds(text, latitude, longitude, elevation);

    // ISO 6709:2008, annex D, writes 50°40′46.461″N 95°48′26.533″W, from memory; the others are the same place by arithmetic: 40' 46.461" =
    // 0.67957250°, 48' 26.533" = 0.80737028°.
    [Theory]
    [InlineData("50°40′46.461″N 95°48′26.533″W")]
    [InlineData("50°40'46.461\"N, 95°48'26.533\"W")]
    [InlineData("50° 40' 46.461'' N   95° 48' 26.533'' W")]
    [InlineData("N 50°40'46.461\" W 95°48'26.533\"")]
    [InlineData("N50 40 46.461 W95 48 26.533")]
    [InlineData("50 40 46.461 N 95 48 26.533 W")]
    [InlineData("50 40 46.461, -95 48 26.533")]
    [InlineData("50 40 46.461 -95 48 26.533")]
    [InlineData("50:40:46.461 −95:48:26.533")]
    [InlineData("50:40:46.461N 95:48:26.533W")]
    [InlineData("50°40,77435' N 95°48,44221667' W")]
    [InlineData("50° 40.77435′ N, 95° 48.44221667′ W")]
    [InlineData("95°48′26.533″W 50°40′46.461″N")]
    [InlineData("50.6795725 -95.80737028")]
    [InlineData("50.6795725, -95.80737028")]
    [InlineData("(50.6795725, -95.80737028)")]
    [InlineData("50.6795725; -95.80737028")]
    [InlineData("50,6795725; -95,80737028")]
    [InlineData("50,6795725 -95,80737028")]
    [InlineData("50.6795725° N, 95.80737028° W")]
    [InlineData("+50.6795725 -95.80737028")]
    [InlineData("50.6795725n 95.80737028w")]
    [InlineData("50.6795725 North, 95.80737028 West")]
    [InlineData("lat: 50.6795725, lon: -95.80737028")]
    [InlineData("Latitude 50.6795725 Longitude -95.80737028")]
    [InlineData("lon -95.80737028 lat 50.6795725")]
    [InlineData("50°40'46.461\" -95°48'26.533\"")]
    [InlineData("50d40m46.461 -95d48m26.533")]
    public void Degrees_in_any_common_form_are_the_same_place(string text)
    {
        var point = Assert.IsType<PlaceReading.Point>(PlaceText.Read(text));
        Assert.Equal(50.6795725, point.LatitudeDeg, 1e-7);
        Assert.Equal(-95.80737028, point.LongitudeDeg, 1e-7);
    }

    // The forms of address that map pages use; common practice, no source.
    [Theory]
    [InlineData("https://maps.example/place/Lake/@-24.75,15.29,12z/data=!3m1!4b1!8m2!3d-24.7553!4d15.2905", -24.7553, 15.2905)]
    [InlineData("https://maps.example/?mlat=-24.7553&mlon=15.2905#map=12/-24.7/15.2", -24.7553, 15.2905)]
    [InlineData("https://maps.example/#map=12/-24.7553/15.2905", -24.7553, 15.2905)]
    [InlineData("https://maps.example/?q=-24.7553,15.2905", -24.7553, 15.2905)]
    [InlineData("https://maps.example/?q=-24.7553%2C+15.2905&z=3", -24.7553, 15.2905)]
    [InlineData("https://maps.example/maps?ll=-24.7553,15.2905&q=Salt+pan", -24.7553, 15.2905)]
    [InlineData("https://maps.example/view?lat=-24.7553&zoom=4&lng=15.2905", -24.7553, 15.2905)]
    [InlineData("https://maps.example/@-24.7553,15.2905,14z", -24.7553, 15.2905)]
    [InlineData("https://maps.example/x7GhQ2", null, null)]
    [InlineData("https://maps.example/?q=95.5,15.2905", null, null)]
    public void The_numbers_of_a_map_link_are_found(string text, double? latitude, double? longitude) =>
        Holds(text, latitude, longitude, null);

    [Theory]
    [InlineData("", "Nothing is written")]
    [InlineData("95.2, 15.1", "The latitude, 95.2, is out of range")]
    [InlineData("120.5, 15.1", "Perhaps the longitude stands first")]
    [InlineData("15.1, 195.2", "The longitude, 195.2, is out of range")]
    [InlineData("15 61 00 N 20 00 00 E", "Minutes and seconds are below 60")]
    [InlineData("15.1 N 20.2 N", "Both numbers are a latitude")]
    [InlineData("-15.1 S, 20.2 E", "a sign or a letter, not both")]
    [InlineData("15.1", "These numbers are no place")]
    [InlineData("15,5,20,5", "These numbers are no place")]
    [InlineData("15.5 20.5 30.5", "These numbers are no place")]
    [InlineData("15.5.5, 20", "These numbers are no place")]
    [InlineData("٤٨.٢٠٨٥, ١٦.٣٧٢١", "with the digits 0 to 9")] // Arabic-Indic
    [InlineData("４８.２０８５, 16.3721", "with the digits 0 to 9")] // fullwidth
    [InlineData("48°१२' N 16°२२' E", "with the digits 0 to 9")] // Devanagari
    [InlineData("geo:٤٨.٢,١٦.٣", "The geo: address cannot be read")]
    [InlineData("geo:0,0?q=٤٨.٢,١٦.٣", "There are no coordinates in that link")]
    [InlineData("https://maps.example/?q=٤٨.٢٠,١٦.٣٧", "There are no coordinates in that link")]
    [InlineData("https://maps.example/#map=１２/48.2/16.3", "There are no coordinates in that link")]
    public void What_is_no_place_is_told_why(string text, string why) =>
        Assert.Contains(why, Assert.IsType<PlaceReading.Wrong>(PlaceText.Read(text)).Why, StringComparison.Ordinal);

    [Theory]
    [InlineData("Hermanus")]
    [InlineData("Tromsø")]
    [InlineData("Kilometre 12 lay-by")]
    [InlineData("São Tomé das Letras")]
    [InlineData("Saint-Étienne 2")]
    [InlineData("Χιλιόμετρο ١٢")]
    public void Words_are_a_name(string text) => Assert.Equal(new PlaceReading.Name(text), PlaceText.Read(text));

    [Fact]
    public void A_code_is_a_point_and_its_end_with_a_place_waits_for_the_place()
    {
        var point = Assert.IsType<PlaceReading.Point>(PlaceText.Read("8FVC2222+22"));
        Assert.Equal(47.0000625, point.LatitudeDeg, 1e-9);
        Assert.Equal(new PlaceReading.ShortCode("CJ+2VX", "Reading, England"), PlaceText.Read("cj+2vx Reading, England"));
        Assert.Equal(new PlaceReading.ShortCode("9QCJ+2VX", ""), PlaceText.Read("9QCJ+2VX"));
    }

    [Fact]
    public void Whatever_is_typed_gets_an_answer() =>
        Gen.OneOf(Gen.String, Gen.String[Gen.Char["0123456789.,;:°'\" NSEW+-/geo:lat?&=#٤８२"], 0, 40])
            .Sample(text =>
                PlaceText.Read(text) is not PlaceReading.Point point
                || (Math.Abs(point.LatitudeDeg) <= 90 && Math.Abs(point.LongitudeDeg) <= 180));

    [Fact]
    public void Every_place_written_in_degrees_minutes_and_seconds_is_read_back() =>
        Gen.Select(Gen.Double[-90, 90], Gen.Double[-180, 180])
            .Sample(
                (latitude, longitude) =>
                {
                    var point = PlaceText.Read($"{Written(latitude, 'N', 'S')} {Written(longitude, 'E', 'W')}") as PlaceReading.Point;
                    return point is not null
                        && Math.Abs(point.LatitudeDeg - latitude) < 2e-6
                        && Math.Abs(point.LongitudeDeg - longitude) < 2e-6;
                });

    // Rounded down, so that 59.9999 seconds never become 60.
    private static string Written(double deg, char positive, char negative)
    {
        var seconds = Math.Floor(Math.Abs(deg) * 3600 * 1000) / 1000;
        return FormattableString
            .Invariant(
                $"{Math.Floor(seconds / 3600)}°{Math.Floor(seconds / 60) % 60}'{seconds % 60:0.000}\"{(deg < 0 ? negative : positive)}")
            .Replace("60.000\"", "59.999\"", StringComparison.Ordinal);
    }

    private static void Holds(string text, double? latitude, double? longitude, double? elevation)
    {
        if (latitude is not { } north || longitude is not { } east)
        {
            Assert.IsType<PlaceReading.Wrong>(PlaceText.Read(text));
            return;
        }

        var point = Assert.IsType<PlaceReading.Point>(PlaceText.Read(text));
        Assert.Equal(north, point.LatitudeDeg, 1e-9);
        Assert.Equal(east, point.LongitudeDeg, 1e-9);
        Assert.Equal(elevation, point.ElevationM);
    }
}

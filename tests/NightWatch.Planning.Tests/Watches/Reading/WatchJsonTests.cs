using System.Text.Json;
using NightWatch.Planning.Watches;
using NightWatch.Planning.Watches.Reading;
using NightWatch.Sky.Places;
using NightWatch.Sky.Subjects;
using NodaTime;

namespace NightWatch.Planning.Tests.Watches.Reading;

public sealed class WatchJsonTests
{
    public static TheoryData<Subject, string> Subjects =>
        new()
        {
            { new Subject.GalacticCore(), """{"kind":"galacticCore"}""" },
            { new Subject.GalacticBand(80.5), """{"kind":"galacticBand","longitudeDeg":80.5}""" },
            {
                new Subject.FixedPoint("Big cloud", 80.9, -69.75),
                """{"kind":"fixedPoint","name":"Big cloud","rightAscensionDeg":80.9,"declinationDeg":-69.75}"""
            },
            { new Subject.Stars(), """{"kind":"stars"}""" },
        };

    [Theory, MemberData(nameof(Subjects))]
    public void A_subject_is_an_object_with_its_kind(Subject subject, string json)
    {
        Assert.Equal(json, JsonSerializer.Serialize(subject, WatchJson.Options));
        Assert.Equal(subject, JsonSerializer.Deserialize<Subject>(json, WatchJson.Options));
    }

    [Fact]
    public void A_watch_comes_back_as_it_was_written()
    {
        var watch = WatchFile.Read(WatchFile.Example, "example").Value!;

        var again = JsonSerializer.Serialize(
            JsonSerializer.Deserialize<Watch>(JsonSerializer.Serialize(watch, WatchJson.Options), WatchJson.Options), WatchJson.Options);

        Assert.Equal(JsonSerializer.Serialize(watch, WatchJson.Options), again);
    }

    [Fact]
    public void Places_and_times_are_written_as_people_write_them()
    {
        Assert.Equal(
            """{"latitudeDeg":-24.5,"longitudeDeg":15.25,"elevationM":570}""",
            JsonSerializer.Serialize(new GeoPosition(-24.5, 15.25, 570), WatchJson.Options));
        Assert.Equal("[[80,1.5],[120,3]]", JsonSerializer.Serialize(new HorizonProfile([new(120, 3), new(80, 1.5)]), WatchJson.Options));
        Assert.Equal("\"19:00\"", JsonSerializer.Serialize(new LocalTime(19, 0), WatchJson.Options));
        Assert.Equal("\"Africa/Windhoek\"", JsonSerializer.Serialize(DateTimeZoneProviders.Tzdb["Africa/Windhoek"], WatchJson.Options));
        Assert.Equal("\"clay\"", JsonSerializer.Serialize(GroundKind.Clay, WatchJson.Options));
    }
}

using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using NightWatch.Planning.Watches;
using NightWatch.Planning.Watches.Reading;
using NightWatch.Sky.Places;
using NightWatch.Sky.Subjects;

namespace NightWatch.Planning.Tests.Watches.Reading;

public sealed class WatchFileTests
{
    private const string Least = """
        {
          "id": "w", "subscriber": { "name": "", "address": "a@example.org" },
          "site": { "id": "s", "name": "S", "zone": "UTC", "position": { "latitudeDeg": 1, "longitudeDeg": 2 } }
        }
        """;

    [Fact]
    public void The_example_is_a_watch_without_a_fault()
    {
        var reading = WatchFile.Read(WatchFile.Example, "example");

        Assert.Empty(reading.Faults);
        Assert.Equal("salt-pan", reading.Value!.Site.Id);
        Assert.Equal(4, reading.Value.Site.Horizon.Points.Count);
    }

    [Fact]
    public void The_example_names_every_field_there_is()
    {
        var tree = JsonTree.Parse(System.Text.Encoding.UTF8.GetBytes(WatchFile.Example));

        Assert.Empty(
            Fields(typeof(Watch), "").Where(field => !field.StartsWith("subject.", StringComparison.Ordinal)).Except(Written(tree, "")));
    }

    [Fact]
    public void Every_number_and_every_text_has_its_rule()
    {
        var numbers = Fields(typeof(Watch), "", (_, type) => type == typeof(double) || type == typeof(int));
        var texts = Fields(typeof(Watch), "", (_, type) => type == typeof(string));

        Assert.Empty(numbers.Except(FieldRules.Numbers.Keys));
        Assert.Empty(texts.Except(FieldRules.Texts.Keys));
    }

    [Fact]
    public void Only_id_subscriber_and_site_are_needed()
    {
        var watch = WatchFile.Read(Least, "w.json").Value!;

        Assert.Equal(new Limits(), watch.Limits);
        Assert.Equal(new Subject.GalacticCore(), watch.Subject);
    }

    [Theory]
    [InlineData("\"latitudeDeg\": 1", "\"latitudeDeg\": 95", 3, "site.position.latitudeDeg", "-90 to 90")]
    [InlineData("\"UTC\"", "\"Mars/Olympus\"", 3, "site.zone", "IANA time zone")]
    [InlineData("\"a@example.org\"", "\"nobody\"", 2, "subscriber.address", "name@example.org")]
    [InlineData("\"id\": \"w\"", "\"id\": \"Not A Name\"", 2, "id", "lower-case letters")]
    [InlineData("\"id\": \"w\",", "\"id\": \"w\", \"colour\": 3,", 2, "colour", "accepted: id, subscriber")]
    [InlineData("\"id\": \"w\",", "", 1, "id", "is missing")]
    [InlineData("\"id\": \"w\",", "\"id\": \"w\", \"id\": \"x\",", 2, "id", "stands twice")]
    [InlineData("\"id\": \"w\",", "\"id\": \"w\", \"kit\": { \"iso\": 1.5 },", 2, "kit.iso", "a whole number, 50 to 409600")]
    [InlineData("\"id\": \"w\",", "\"id\": \"w\", \"kit\": { \"batteriesWh\": [10, -1] },", 2, "kit.batteriesWh[1]", "1 to 5000 Wh")]
    [InlineData("\"id\": \"w\",", "\"id\": \"w\", \"limits\": { \"cloud\": { \"caution\": 0.1 } },", 2, "limits.cloud.stop", "is missing")]
    [InlineData(
        "\"id\": \"w\",",
        "\"id\": \"w\", \"limits\": { \"cloud\": { \"caution\": 0.5, \"stop\": 0.2 } },",
        2,
        "limits.cloud.caution",
        "at or below stop")]
    [InlineData("\"id\": \"w\",", "\"id\": \"w\", \"limits\": null,", 2, "limits", "null is not accepted")]
    [InlineData("\"id\": \"w\",", "\"id\": \"w\", \"letters\": { \"eveningAt\": \"25:00\" },", 2, "letters.eveningAt", "a time of day")]
    [InlineData("\"id\": \"w\",", "\"id\": \"w\", \"letters\": { \"morningAt\": \"06:29\" },", 2, "letters.morningAt", "outside them")]
    [InlineData("\"id\": \"w\",", "\"id\": \"w\", \"letters\": { \"eveningAt\": \"22:00\" },", 2, "letters.eveningAt", "outside them")]
    [InlineData(
        "\"id\": \"w\",",
        "\"id\": \"w\", \"letters\": { \"quietFrom\": \"01:00\", \"quietUntil\": \"07:30\" },",
        2,
        "letters.morningAt",
        "01:00 to 07:30")]
    [InlineData(
        "\"id\": \"w\",", "\"id\": \"w\", \"outing\": { \"freeEvenings\": [\"none\"] },", 2, "outing.freeEvenings[0]", "monday, tuesday")]
    [InlineData("\"id\": \"w\",", "\"id\": \"w\", \"outing\": { \"homeLatitudeDeg\": 3 },", 2, "outing", "both or neither")]
    [InlineData("\"id\": \"w\",", "\"id\": \"w\", \"subject\": { \"kind\": \"comet\" },", 2, "subject.kind", "galacticCore, galacticBand")]
    [InlineData(
        "\"id\": \"w\",",
        "\"id\": \"w\", \"subject\": { \"kind\": \"galacticBand\", \"longitudeDeg\": 360 },",
        2,
        "subject.longitudeDeg",
        "0 to 359")]
    [InlineData(
        "\"id\": \"w\",",
        "\"id\": \"w\", \"subject\": { \"kind\": \"fixedPoint\", \"name\": \"x\", \"rightAscensionDeg\": 1 },",
        2,
        "subject.declinationDeg",
        "is missing")]
    [InlineData("\"zone\":", "\"horizon\": [[10, 1], [10, 2]], \"zone\":", 3, "site.horizon[1]", "azimuth 10 stands twice")]
    [InlineData("\"zone\":", "\"horizon\": [[10]], \"zone\":", 3, "site.horizon[0]", "[azimuth 0 to below 360")]
    [InlineData("\"name\": \"S\"", "\"name\": \"S\\uFFFE\"", 3, "site.name", "no noncharacters")]
    [InlineData("\"name\": \"\"", "\"name\": \"\U0001FFFF\"", 2, "subscriber.name", "no noncharacters")]
    [InlineData("\"zone\":", "\"accessNotes\": \"\uFDD0\", \"zone\":", 3, "site.accessNotes", "no noncharacters")]
    [InlineData("\"UTC\",", "\"UTC\" ", 3, "", "not JSON")]
    public void A_fault_names_its_line_its_field_and_what_is_accepted(string good, string bad, int line, string field, string accepted)
    {
        var reading = WatchFile.Read(Least.Replace(good, bad, StringComparison.Ordinal), "w.json");

        Assert.Null(reading.Value);
        var fault = Assert.Single(reading.Faults);
        Assert.Equal((line, field), (fault.Line, fault.Field));
        Assert.Contains(accepted, fault.Message, StringComparison.Ordinal);
        Assert.StartsWith($"w.json line {line}", fault.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void All_faults_are_found_at_once()
    {
        var bad = Least
            .Replace("\"latitudeDeg\": 1", "\"latitudeDeg\": 95", StringComparison.Ordinal)
            .Replace("\"w\"", "7", StringComparison.Ordinal);

        Assert.Equal(["id", "site.position.latitudeDeg"], WatchFile.Read(bad, "w.json").Faults.Select(fault => fault.Field));
    }

    [Theory]
    [InlineData("")]
    [InlineData("[]")]
    [InlineData("null")]
    [InlineData("{} {}")]
    [InlineData("\"watch\"")]
    public void A_text_that_is_no_watch_is_a_fault_and_no_exception(string text) => Assert.NotEmpty(WatchFile.Read(text, "w.json").Faults);

    [Fact]
    public void A_site_file_obeys_the_same_rules_as_the_site_in_a_watch()
    {
        var reading = SiteFile.Read(
            """{ "id": "s", "name": "S", "zone": "UTC", "position": { "latitudeDeg": 95, "longitudeDeg": 2 } }""",
            "s.json");

        Assert.Equal("position.latitudeDeg", Assert.Single(reading.Faults).Field);
    }

    /// <summary>Every field path of a type, as the serializer sees it.</summary>
    private static IEnumerable<string> Fields(Type type, string path, Func<string, Type, bool>? wanted = null)
    {
        type = Nullable.GetUnderlyingType(type) ?? type;
        if (type == typeof(GeoPosition)) type = typeof(WrittenPosition);
        if (type == typeof(Subject)) return SubjectConverter.Kinds.Values.SelectMany(kind => Fields(kind, path, wanted));
        var info = WatchJson.Options.GetTypeInfo(type);
        return info.Kind switch
        {
            JsonTypeInfoKind.Object => info
                .Properties.Where(property => property.Get is not null)
                .SelectMany(property =>
                    Fields(property.PropertyType, path.Length == 0 ? property.Name : path + "." + property.Name, wanted)),
            JsonTypeInfoKind.Enumerable => Fields(info.ElementType!, path + "[]", wanted),
            _ => wanted is null || wanted(path, type) ? [path] : [],
        };
    }

    private static IEnumerable<string> Written(JsonTree tree, string path) =>
        tree.Kind switch
        {
            JsonTokenType.StartObject => tree.Members.SelectMany(member =>
                Written(member.Value, path.Length == 0 ? member.Name : path + "." + member.Name)),
            JsonTokenType.StartArray => [path, .. tree.Items.SelectMany(item => Written(item, path + "[]"))],
            _ => [path],
        };
}

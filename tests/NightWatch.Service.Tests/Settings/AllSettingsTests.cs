using System.Globalization;
using System.Reflection;
using System.Runtime.CompilerServices;
using System.Text.Json;
using NightWatch.Delivery.Mail;
using NightWatch.Service.Settings;
using NightWatch.Service.Terminal;
using NightWatch.Watchkeeping.Forecasts;

namespace NightWatch.Service.Tests.Settings;

public sealed class AllSettingsTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("nightwatch-settings-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void The_example_binds_and_lacks_only_what_everyone_must_say_for_himself() =>
        Assert.Equal(
            ["Feeds:Usage", "Feeds:Contact"],
            AllSettings.Read(folder, FromRoot("appsettings.example.json")).Faults().Select(fault => fault.Split(' ')[0]));

    [Fact]
    public void The_example_names_every_setting_and_shows_its_default()
    {
        var written = AllSettings.Read(folder, FromRoot("appsettings.example.json")).Configuration;

        foreach (var (key, value) in Defaults()) Assert.Equal((key, value), (key, written[key]));
    }

    [Theory]
    [InlineData("""{ "Mial": {} }""", "Mial")]
    [InlineData("""{ "Mail": { "Hots": "x" } }""", "Hots")]
    [InlineData("""{ "Mail": { "Port": "many" } }""", "Mail:Port")]
    [InlineData("{ \"Mail\": {\n \"Port\": }", "appsettings.json line 2")]
    public void What_cannot_be_read_is_refused_in_one_line_that_names_the_key(string json, string named)
    {
        File.WriteAllText(Path.Combine(folder, "appsettings.json"), json);

        var refused = Assert.Throws<BadInputException>(() => AllSettings.Read(folder, null));

        Assert.Contains(named, refused.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Service", "Port", "70000")]
    [InlineData("Service", "TickSeconds", "0")]
    [InlineData("Service", "StopSeconds", "0")]
    [InlineData("Service", "Address", "everywhere")]
    [InlineData("Service", "PagesBase", "night.example.org")]
    [InlineData("Service", "MessageIdDomain", "a b")]
    [InlineData("Service", "IdKeyFile", "/no/such/file")]
    [InlineData("Database", "Connection", "")]
    [InlineData("Database", "KeepForecastRuns", "1")]
    [InlineData("Database", "KeepReplayDays", "-1")]
    [InlineData("Database", "KeepLettersDays", "0")]
    [InlineData("Database", "KeepVerdictsDays", "1")]
    [InlineData("Feeds", "MostAgeHours", "0")]
    [InlineData("Feeds", "Usage", "fun")]
    [InlineData("Feeds", "NwsUrl", "nowhere")]
    [InlineData("Mail", "Transport", "pigeon")]
    [InlineData("Mail", "From", "nobody")]
    [InlineData("Outbox", "Batch", "0")]
    [InlineData("Observations", "AerodromeKm", "-1")]
    [InlineData("Observations", "AerodromeKm", "30")] // without a contact
    [InlineData("Observations", "Aerodromes", "FYWW,windhoek")]
    [InlineData("Observations", "AerodromeUrl", "nowhere")]
    [InlineData("Database", "KeepOutcomesDays", "100")]
    [InlineData("Webhooks", "TimeoutSeconds", "61")]
    public void A_value_out_of_range_is_a_fault_that_names_its_key_and_what_is_accepted(string section, string key, string value)
    {
        File.WriteAllText(Path.Combine(folder, "appsettings.json"), """{ "Feeds": { "Order": "fake", "Usage": "private" } }""");
        File.WriteAllText(Path.Combine(folder, "over.json"), $$"""{ "{{section}}": { "{{key}}": "{{value}}" } }""");

        var fault = Assert.Single(AllSettings.Read(folder, "over.json").Faults());

        Assert.Contains($"{section}:{key}", fault, StringComparison.Ordinal);
        Assert.Contains("accepted", fault, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Port", "70000")]
    [InlineData("Security", "ssl")]
    [InlineData("Security", "none")] // not on loopback
    [InlineData("CaFile", "/no/such/file")]
    [InlineData("UserName", "")]
    [InlineData("PasswordFile", "")]
    [InlineData("PasswordFile", "/no/such/file")]
    [InlineData("Folder", " ")]
    [InlineData("EveryMinutes", "1441")]
    public void A_mailbox_for_reports_is_judged_once_its_server_is_named(string key, string value)
    {
        var secret = Path.Combine(folder, "imap");
        File.WriteAllText(secret, "marula-7");
        if (!OperatingSystem.IsWindows()) File.SetUnixFileMode(secret, UnixFileMode.UserRead | UnixFileMode.UserWrite);
        var mailbox = new Dictionary<string, string> { ["UserName"] = "watch", ["PasswordFile"] = secret, [key] = value };
        IReadOnlyList<string> FaultsWith(string host)
        {
            mailbox["Host"] = host;
            File.WriteAllText(
                Path.Combine(folder, "appsettings.json"),
                JsonSerializer.Serialize(new { Feeds = new { Order = "fake", Usage = "private" }, Bounces = mailbox }));
            return AllSettings.Read(folder, null).Faults();
        }

        Assert.Empty(FaultsWith(""));
        Assert.Matches($"^Bounces:{key}[: ]", Assert.Single(FaultsWith("imap.example.org")));
    }

    [Theory]
    [InlineData("fifteen letters", "is too short")]
    [InlineData("               \n", "is too short")]
    [InlineData("", "is empty")]
    [InlineData("sixteen letters!", null)]
    public void A_short_key_of_the_operator_is_refused(string key, string? said)
    {
        var file = Path.Combine(folder, "operator");
        File.WriteAllText(file, key);
        File.WriteAllText(
            Path.Combine(folder, "appsettings.json"),
            JsonSerializer.Serialize(new { Feeds = new { Order = "fake", Usage = "private" }, Service = new { OperatorKeyFile = file } }));

        var faults = AllSettings.Read(folder, null).Faults();

        if (said is null) Assert.Empty(faults);
        else
            Assert.Matches(
                $"^Service:OperatorKeyFile: .*{said}.*; accepted: a file that holds a password of at least 16 characters",
                Assert.Single(faults));
    }

    [Theory]
    [InlineData("fake", "", "", "Feeds:Usage is not set")]
    [InlineData("open-meteo", "", "", "Feeds:Usage is not set")]
    [InlineData("met-norway", "private", "", "Feeds:Contact is not set")]
    [InlineData("open-meteo,nws", "private", "", "Feeds:Contact is not set")]
    [InlineData("met-norway", "private", "nobody", "neither a mail address nor a web page")]
    [InlineData("open-meteo", "commercial", "", "use MET Norway, set the key of a paid")]
    [InlineData("met-norway,open-meteo", "Commercial", "ops@example.org", "Feeds:OpenMeteoKeyFile")]
    public void A_licence_that_is_not_kept_stops_the_start_and_says_what_to_do(string order, string usage, string contact, string said)
    {
        File.WriteAllText(
            Path.Combine(folder, "appsettings.json"),
            $$"""{ "Feeds": { "Order": "{{order}}", "Usage": "{{usage}}", "Contact": "{{contact}}" } }"""
        );

        var refused = Assert.Throws<BadInputException>(() => AllSettings.ReadValid(folder, null));

        Assert.Contains(said, refused.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("met-norway", "commercial", "")]
    [InlineData("open-meteo", "private", "")]
    [InlineData("open-meteo", "commercial", "http://weather.lan:8080/")]
    public void A_licence_that_is_kept_starts(string order, string usage, string ownInstance)
    {
        File.WriteAllText(Path.Combine(folder, "appsettings.json"), $$"""
            { "Feeds": { "Order": "{{order}}", "Usage": "{{usage}}", "Contact": "ops@example.org", "OpenMeteoUrl": "{{ownInstance}}",
              "OpenMeteoEnsembleUrl": "{{ownInstance}}" } }
            """);

        Assert.Equal(order, AllSettings.ReadValid(folder, null).Feeds.Order);
    }

    [Theory]
    [InlineData("open-meteo,met-norway", "auto", "open-meteo-ensemble")]
    [InlineData("met-norway", "auto", null)]
    [InlineData("open-meteo", "none", null)]
    [InlineData("fake", "fake", "fake")]
    public void The_ensemble_goes_with_the_feeds_unless_it_is_named(string order, string setting, string? ensemble) =>
        Assert.Equal(ensemble, new FeedsOptions { Order = order, Ensemble = setting }.ToWeather().Ensemble);

    [Fact]
    public void The_named_file_is_over_the_one_in_the_folder()
    {
        File.WriteAllText(Path.Combine(folder, "appsettings.json"), """{ "Service": { "Port": 1, "TickSeconds": 7 } }""");
        File.WriteAllText(Path.Combine(folder, "other.json"), """{ "Service": { "Port": 2 } }""");

        var service = AllSettings.Read(folder, "other.json").Service;

        Assert.Equal((2, 7), (service.Port, service.TickSeconds));
    }

    [Fact]
    public void The_secret_behind_the_ids_comes_from_its_file()
    {
        var secret = Path.Combine(folder, "id-key");
        File.WriteAllText(secret, "3f7a-not-in-the-settings\n");
        File.WriteAllText(Path.Combine(folder, "appsettings.json"), $$"""{ "Service": { "IdKeyFile": "{{secret}}" } }""");

        Assert.Equal("3f7a-not-in-the-settings"u8, AllSettings.Read(folder, null).Head().IdKey.Span);
        Assert.True(AllSettings.ForRehearsal("x.db", "letters", 1).Head().IdKey.IsEmpty);
    }

    [Fact]
    public void A_named_file_that_is_not_there_is_bad_input() =>
        Assert.Contains(
            "--config", Assert.Throws<BadInputException>(() => AllSettings.Read(folder, "none.json")).Message, StringComparison.Ordinal);

    /// <summary>Every setting of every section with its default.</summary>
    private static IEnumerable<(string Key, string? Value)> Defaults() =>
        from section in typeof(AllSettings).GetProperties()
        let name = section.PropertyType.GetField("Section")?.GetRawConstantValue() as string
        where name is not null
        from setting in Defaults(name, Activator.CreateInstance(section.PropertyType)!)
        select setting;

    private static IEnumerable<(string Key, string? Value)> Defaults(string section, object options) => options.GetType()
        .GetProperties(BindingFlags.Public | BindingFlags.Instance).Where(property => property.CanWrite)
        .SelectMany(property => property.GetValue(options) switch
        {
            DkimOptions inner => Defaults($"{section}:{property.Name}", inner),
            var value => [($"{section}:{property.Name}", Convert.ToString(value, CultureInfo.InvariantCulture))],
        });

    private static string FromRoot(string name, [CallerFilePath] string here = "") =>
        Path.GetFullPath(Path.Combine(Path.GetDirectoryName(here)!, "../../..", name));
}

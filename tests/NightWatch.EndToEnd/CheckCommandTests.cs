using Microsoft.Data.Sqlite;
using NightWatch.EndToEnd.Faults;
using NightWatch.EndToEnd.Programs;
using NightWatch.Planning.Watches.Reading;
using NightWatch.Service.Tests.Settings;
using NightWatch.Weather.Tests.Loopback;

namespace NightWatch.EndToEnd;

public sealed class CheckCommandTests
{
    [Fact]
    public async Task All_is_well_with_invented_weather_and_a_folder()
    {
        using var program = new Nightwatch();
        program.Write("appsettings.json", """{ "Feeds": { "Order": "fake", "Usage": "private" } }""");

        var ran = await program.RunAsync("check");

        Assert.True(ran.Exit == 0, ran.Output + ran.Error);
        Assert.DoesNotContain("fault ", ran.Output, StringComparison.Ordinal);
        foreach (var about in (string[])["configuration", "secrets", "database", "feed", "mail", "pages", "zone data"])
            Assert.Contains($"ok      {about}:", ran.Output, StringComparison.Ordinal);
        foreach (var about in (string[])["clock", "disk"]) Assert.Contains($" {about}:", ran.Output, StringComparison.Ordinal);
        // A check looks; the database is the first start's to make.
        Assert.Empty(Directory.GetFiles(program.Folder, "nightwatch.db*"));
    }

    [Fact]
    public async Task A_wrong_mail_password_is_told_in_one_line()
    {
        await using var server = new LockedServer();
        using var program = new Nightwatch();
        var secret = Path.Combine(program.Folder, "secret");
        File.WriteAllText(secret, "not-the-password");
        if (!OperatingSystem.IsWindows()) File.SetUnixFileMode(secret, UnixFileMode.UserRead | UnixFileMode.UserWrite);
        program.Write("appsettings.json", $$"""
            { "Feeds": { "Order": "fake", "Usage": "private" }, "Mail": { "Transport": "smtp", "Host": "127.0.0.1",
              "Port": {{server.Port}}, "Security": "none", "UserName": "watch", "PasswordFile": "{{secret}}" } }
            """);

        var ran = await program.RunAsync("check");

        Assert.Equal(1, ran.Exit);
        var wrong = Assert.Single(ran.Output.Split('\n'), line => line.StartsWith("fault", StringComparison.Ordinal));
        Assert.StartsWith("fault   mail:", wrong, StringComparison.Ordinal);
        Assert.DoesNotContain("not-the-password", ran.Output + ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_test_letter_goes_through_the_configured_transport()
    {
        using var program = new Nightwatch();
        program.Write("appsettings.json", """
            { "Feeds": { "Order": "fake", "Usage": "private" }, "Mail": { "From": "NightWatch <watch@example.org>" },
              "Service": { "ListUnsubscribe": "https://night.example.org/stop/7" } }
            """);

        var ran = await program.RunAsync("check", "--send-test", "ada@example.net");

        Assert.True(ran.Exit == 0, ran.Output + ran.Error);
        Assert.Contains("ok      test letter: written to", ran.Output, StringComparison.Ordinal);
        var letter = await MimeKit.MimeMessage.LoadAsync(
            Assert.Single(Directory.GetFiles(Path.Combine(program.Folder, "letters"), "*.eml")), TestContext.Current.CancellationToken);
        Assert.Equal("ada@example.net", Assert.Single(letter.To.Mailboxes).Address);
        Assert.Equal("List-Unsubscribe=One-Click", letter.Headers["List-Unsubscribe-Post"]);
        Assert.Contains("test letter", letter.TextBody, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_test_letter_to_no_address_is_refused()
    {
        using var program = new Nightwatch();
        program.Write("appsettings.json", """{ "Feeds": { "Order": "fake", "Usage": "private" } }""");

        var ran = await program.RunAsync("check", "--send-test", "nobody");

        Assert.Equal(2, ran.Exit);
        Assert.Contains("--send-test", ran.Line, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_feed_that_cannot_be_reached_is_told_in_one_line()
    {
        using var program = new Nightwatch();
        program.Write(
            "appsettings.json",
            """{ "Feeds": { "Order": "met-norway", "Usage": "private", "Contact": "operator@example.org" """ +
            $$""", "MetNorwayUrl": "http://127.0.0.1:{{FreePort.Take()}}/" } }"""
        );

        var ran = await program.RunAsync("check");

        Assert.Equal(1, ran.Exit);
        Assert.StartsWith(
            "fault   feed: met-norway",
            Assert.Single(ran.Output.Split('\n'), line => line.StartsWith("fault", StringComparison.Ordinal)),
            StringComparison.Ordinal);
    }

    [Fact]
    public async Task Every_fault_of_the_configuration_gets_its_line()
    {
        using var program = new Nightwatch();
        program.Write(
            "appsettings.json",
            """{ "Feeds": { "Order": "fake", "Usage": "private" }, "Service": { "Port": 70000, "TickSeconds": 0 } }"""
        );

        var ran = await program.RunAsync("check");

        Assert.Equal(1, ran.Exit);
        Assert.Contains("fault   configuration: Service:Port", ran.Output, StringComparison.Ordinal);
        Assert.Contains("fault   configuration: Service:TickSeconds", ran.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_clock_that_no_answer_agrees_with_is_a_fault()
    {
        await using var feed = await FeedServer.StartAsync((_, http) =>
        {
            http.Response.Headers.Date = "Mon, 01 Jan 2024 00:00:00 GMT";
            http.Response.StatusCode = 503;
            return Task.CompletedTask;
        });
        using var program = new Nightwatch();
        program.Write(
            "appsettings.json",
            """{ "Feeds": { "Order": "met-norway,fake", "Usage": "private", "Contact": "operator@example.org" """ +
            $$""", "MetNorwayUrl": "{{feed.Url}}" } }"""
        );

        var ran = await program.RunAsync("check");

        Assert.Equal(1, ran.Exit);
        // One feed stands in for the other; the clock is what is wrong.
        Assert.Contains("warning feed: met-norway", ran.Output, StringComparison.Ordinal);
        Assert.StartsWith(
            "fault   clock:",
            Assert.Single(ran.Output.Split('\n'), line => line.StartsWith("fault", StringComparison.Ordinal)),
            StringComparison.Ordinal);
    }

    [Fact]
    public async Task Migrations_that_wait_are_told_and_not_run_and_a_missing_folder_is_a_fault()
    {
        using var program = new Nightwatch();
        program.Write("appsettings.json", """{ "Feeds": { "Order": "fake", "Usage": "private" } }""");
        await SqlAsync(program, "CREATE TABLE older (id INTEGER)");

        var waiting = await program.RunAsync("check", "--json");
        program.Write(
            "appsettings.json",
            """{ "Database": { "Connection": "/proc/nowhere/nightwatch.db" }, "Feeds": { "Order": "fake", "Usage": "private" } }"""
        );
        var missing = await program.RunAsync("check");

        Assert.Equal(0, waiting.Exit);
        using var document = System.Text.Json.JsonDocument.Parse(waiting.Output);
        var database = document
            .RootElement.GetProperty("findings")
            .EnumerateArray()
            .First(finding => finding.GetProperty("about").GetString() == "database");
        Assert.Equal("warning", database.GetProperty("level").GetString());
        Assert.Contains("migrations", database.GetProperty("text").GetString(), StringComparison.Ordinal);
        Assert.Equal(1L, await SqlAsync(program, "SELECT count(*) FROM sqlite_master"));
        Assert.Equal(1, missing.Exit);
        Assert.Contains("fault   database:", missing.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_empty_file_is_told_as_what_it_is_and_never_backed_up_as_if_it_held_something()
    {
        using var program = new Nightwatch();
        program.Write("appsettings.json", """{ "Feeds": { "Order": "fake", "Usage": "private" } }""");
        File.WriteAllBytes(Path.Combine(program.Folder, "nightwatch.db"), []);

        var check = await program.RunAsync("check");
        var backup = await program.RunAsync("backup", "copy.db");

        Assert.Equal(0, check.Exit);
        Assert.Contains("nightwatch.db is empty; the next start makes a new database in it", check.Output, StringComparison.Ordinal);
        Assert.NotEqual(0, backup.Exit);
        Assert.Contains("is empty", backup.Line, StringComparison.Ordinal);
        Assert.Empty(Directory.GetFiles(program.Folder, "copy.db*"));
        Assert.Equal(0, (await program.RunAsync("watch", "list")).Exit);
    }

    [Fact]
    public async Task A_watch_that_cannot_be_read_is_named_with_its_subscriber()
    {
        using var program = new Nightwatch();
        program.Write("appsettings.json", """{ "Feeds": { "Order": "fake", "Usage": "private" } }""");
        program.Write("watch.json", WatchFile.Example);
        Assert.Equal(0, (await program.RunAsync("watch", "add", "watch.json")).Exit);
        var named = (string)(await SqlAsync(program, "SELECT 'watch ' || id || ' of ' || address FROM watch"))!;
        await SqlAsync(program, "UPDATE watch SET body = replace(body, '\"', '!')");

        var check = await program.RunAsync("check");
        var list = await program.RunAsync("watch", "list");

        Assert.Equal(1, check.Exit);
        Assert.Contains($"fault   rows: the stored {named} cannot be read", check.Output, StringComparison.Ordinal);
        Assert.Contains("ok      zone data:", check.Output, StringComparison.Ordinal);
        Assert.Equal(0, list.Exit);
    }

    [Fact]
    public async Task Files_that_others_may_read_are_named_and_new_ones_are_closed()
    {
        if (OperatingSystem.IsWindows()) return;
        using var program = new Nightwatch();
        program.Write("appsettings.json", """{ "Feeds": { "Order": "fake", "Usage": "private" } }""");
        Assert.Equal(0, (await program.RunAsync("watch", "list")).Exit);
        var file = Path.Combine(program.Folder, "nightwatch.db");
        var closed = await program.RunAsync("check");
        var made = File.GetUnixFileMode(file);
        File.SetUnixFileMode(file, made | UnixFileMode.OtherRead);

        var open = await program.RunAsync("check");

        Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, made);
        Assert.DoesNotContain("chmod", closed.Output, StringComparison.Ordinal);
        Assert.Contains($"'chmod 600 {file}' closes them", open.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_full_disk_and_a_bad_address_of_pages_are_each_told_and_stop_no_other_check()
    {
        await using var disk = await SmallDisk.MountAsync(4);
        using var program = new Nightwatch();
        var file = Path.Combine(disk.Folder, "nightwatch.db");
        program.Write(
            "appsettings.json",
            $$"""{ "Database": { "Connection": "{{file}}" }, "Feeds": { "Order": "fake", "Usage": "private" }""" +
            $$""", "Service": { "PagesBase": "night.example.org" } }"""
        );
        program.Write("watch.json", WatchFile.Example);
        program.Write(
            "good.json",
            $$"""{ "Database": { "Connection": "{{file}}" }""" +
            $$""", "Feeds": { "Order": "fake", "Usage": "private" } , "Service": { "PagesBase": "" } }"""
        );
        Assert.Equal(0, (await program.RunAsync("watch", "add", "watch.json", "--config", "good.json")).Exit);
        disk.Fill();

        var check = await program.RunAsync("check", "--send-test", "ada@example.net");

        Assert.Equal(1, check.Exit);
        Assert.Contains("fault   configuration: Service:PagesBase", check.Output, StringComparison.Ordinal);
        Assert.Contains("fault   disk:", check.Output, StringComparison.Ordinal);
        foreach (var about in (string[])["database", "feed", "mail", "pages", "clock", "zone data", "test letter"])
            Assert.Contains($" {about}:", check.Output, StringComparison.Ordinal);
        Assert.Contains("ok      zone data:", check.Output, StringComparison.Ordinal);
        Assert.Empty(check.Error);
    }

    [Fact]
    public async Task Zone_data_are_brought_up_to_date_by_a_file_without_a_new_program()
    {
        using var program = new Nightwatch();
        var version = NodaTime.DateTimeZoneProviders.Tzdb.VersionId.Split(' ')[1];
        ZoneData.Write(program.Folder, (version, "2031z"), ("Africa/Windhoek", "Africa/Newtown!"));
        program.Write(
            "appsettings.json",
            """{ "Feeds": { "Order": "fake", "Usage": "private" }, "Service": { "ZoneFile": "zones.nzd" } }"""
        );
        program.Write("watch.json", WatchFile.Example);

        var check = await program.RunAsync("check");
        program.Write("moved.json", WatchFile.Example.Replace(ZoneOf(WatchFile.Example), "Africa/Newtown!", StringComparison.Ordinal));
        var added = await program.RunAsync("watch", "add", "moved.json");
        var shown = await program.RunAsync("watch", "list", "--json");

        Assert.Contains("2031z", check.Output, StringComparison.Ordinal);
        Assert.True(added.Exit == 0, added.Error);
        Assert.Contains("Africa/Newtown!", shown.Output, StringComparison.Ordinal);
    }

    private static async Task<object?> SqlAsync(Nightwatch program, string sql)
    {
        await using var connection = new SqliteConnection($"Data Source={Path.Combine(program.Folder, "nightwatch.db")};Pooling=false");
        await connection.OpenAsync(TestContext.Current.CancellationToken);
        await using var command = connection.CreateCommand();
        command.CommandText = sql;
        return await command.ExecuteScalarAsync(TestContext.Current.CancellationToken);
    }

    private static string ZoneOf(string example) =>
        System.Text.RegularExpressions.Regex.Match(example, "\"zone\": \"([^\"]+)\"").Groups[1].Value;
}

using System.Text;
using System.Text.Json;
using NightWatch.EndToEnd.Killing;
using NightWatch.EndToEnd.Programs;
using NightWatch.Store.Connections;
using NightWatch.Store.Outbox;
using NodaTime;

namespace NightWatch.EndToEnd;

public sealed class OperationsCommandTests
{
    private const string Settings = """{ "Feeds": { "Order": "fake", "Usage": "private" }, "Service": { "Port": 0, "TickSeconds": 1 } }""";

#pragma warning disable RS0030 // The program under test lives by the system's clock, so letters for it must too.
    private static readonly Instant Now = SystemClock.Instance.GetCurrentInstant();
#pragma warning restore RS0030

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task After_a_restore_what_is_past_its_use_is_dropped_and_what_is_not_goes_out_once()
    {
        using var program = new Nightwatch();
        program.Write("appsettings.json", Settings);
        await QueueAsync(program, ("late", Now - Duration.FromHours(1)), ("of-use", Now + Duration.FromHours(6)));
        Assert.Equal(0, (await program.RunAsync("backup", "yesterday.db")).Exit);
        File.Delete(Path.Combine(program.Folder, "nightwatch.db"));

        var restored = await program.RunAsync("restore", "yesterday.db");

        Assert.True(restored.Exit == 0, restored.Error);
        Assert.Contains("1 letters in it are past their use", restored.Output, StringComparison.Ordinal);
        Assert.Contains("1 letters are unsent and still of use", restored.Output, StringComparison.Ordinal);
        await using (var service = ServiceProcess.Run(program.Folder, []))
        {
            var letters = Path.Combine(program.Folder, "letters");
            await KillBench.UntilAsync(
                () => Task.FromResult(Directory.Exists(letters) && Directory.GetFiles(letters, "*.eml").Length > 0), () => service.Log);
            Assert.Equal(0, await service.StopAsync());
            Assert.Contains(
                "Subject: of-use", File.ReadAllText(Assert.Single(Directory.GetFiles(letters, "*.eml"))), StringComparison.Ordinal);
        }

        var states = JsonDocument.Parse((await program.RunAsync("outbox", "list", "--state", "expired", "--json")).Output).RootElement;
        Assert.Equal(1, states.GetArrayLength());
    }

    [Fact]
    public async Task A_restore_can_keep_every_unsent_letter_back_and_waits_for_the_service_to_stop()
    {
        using var program = new Nightwatch();
        program.Write("appsettings.json", Settings);
        await QueueAsync(program, ("sent-after-the-backup", Now + Duration.FromHours(6)));
        Assert.Equal(0, (await program.RunAsync("backup", "yesterday.db")).Exit);
        await using (var service = ServiceProcess.Run(program.Folder, []))
        {
            await KillBench.UntilAsync(() => Task.FromResult(service.Log.Contains("Ready", StringComparison.Ordinal)), () => service.Log);
            var refused = await program.RunAsync("restore", "yesterday.db");
            Assert.Equal(1, refused.Exit);
            Assert.Contains("stop it first", refused.Line, StringComparison.Ordinal);
            Assert.Equal(0, await service.StopAsync());
        }

        var restored = await program.RunAsync("restore", "yesterday.db", "--drop-open");

        Assert.True(restored.Exit == 0, restored.Error);
        Assert.Contains("1 unsent letters are taken out", restored.Output, StringComparison.Ordinal);
        Assert.Single(Directory.GetFiles(program.Folder, "nightwatch.db.before-*Z"));
        Assert.Equal("[]\n", (await program.RunAsync("outbox", "list", "--json")).Output);
    }

    [Fact]
    public async Task A_dead_letter_is_seen_read_and_put_back_and_a_late_one_is_not()
    {
        using var program = new Nightwatch();
        program.Write("appsettings.json", Settings);
        await QueueAsync(program, ("dead", Now + Duration.FromHours(6)), ("dead-and-late", Now + Duration.FromHours(7)));
        await KillAsync(program);

        var listed = JsonDocument.Parse((await program.RunAsync("outbox", "list", "--state", "dead", "--json")).Output).RootElement;
        var shown = await program.RunAsync("outbox", "show", "1", "--eml", "dead.eml");
        var back = await program.RunAsync("outbox", "retry", "1");
        var again = await program.RunAsync("outbox", "retry", "1");
        var none = await program.RunAsync("outbox", "retry");
        var dropped = await program.RunAsync("outbox", "drop", "2");
        var unknown = await program.RunAsync("outbox", "show", "99");

        Assert.Equal(2, listed.GetArrayLength());
        Assert.Equal("no such mailbox", listed[1].GetProperty("lastReply").GetProperty("text").GetString());
        Assert.Contains("Clear skies", shown.Output, StringComparison.Ordinal);
        Assert.Contains("550 5.1.1 no such mailbox", shown.Output, StringComparison.Ordinal);
        Assert.StartsWith("Subject: dead", File.ReadAllText(Path.Combine(program.Folder, "dead.eml")), StringComparison.Ordinal);
        Assert.Equal("Letter 1 is back in the queue.\n", back.Output);
        Assert.Equal((2, 2, 2), (again.Exit, none.Exit, unknown.Exit));
        Assert.Contains("letter 1 is pending; accepted: a dead one", again.Line, StringComparison.Ordinal);
        Assert.Equal("Letter 2 is not sent.\n", dropped.Output);
        var open = JsonDocument.Parse((await program.RunAsync("outbox", "list", "--json")).Output).RootElement;
        Assert.Equal("pending", Assert.Single(open.EnumerateArray()).GetProperty("state").GetString());
    }

    [Fact]
    public async Task Backup_and_restore_of_PostgreSQL_are_left_to_its_own_tools()
    {
        using var program = new Nightwatch();
        program.Write(
            "appsettings.json",
            """{ "Database": { "Connection": "Host=db.example.org;Database=nightwatch;Username=watch;Password=hush" }""" +
            """, "Feeds": { "Order": "fake", "Usage": "private" } }"""
        );

        var backup = await program.RunAsync("backup", "copy.db");
        var restore = await program.RunAsync("restore", "copy.db");

        Assert.Equal((2, 2), (backup.Exit, restore.Exit));
        Assert.Contains("pg_dump", backup.Line, StringComparison.Ordinal);
        Assert.Contains("pg_restore", restore.Line, StringComparison.Ordinal);
        Assert.DoesNotContain("hush", backup.Error + restore.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Pruning_says_what_went()
    {
        using var program = new Nightwatch();
        program.Write("appsettings.json", Settings);
        await QueueAsync(program, ("kept", Now + Duration.FromHours(6)));

        var ran = await program.RunAsync("prune", "--json");

        Assert.True(ran.Exit == 0, ran.Error);
        Assert.Equal(0, JsonDocument.Parse(ran.Output).RootElement.GetProperty("letters").GetInt32());
    }

    /// <summary>One letter that is of use for hours.</summary>
    internal static Task QueueAsync(Database database) => QueueAsync(database, [("of-use", Now + Duration.FromHours(6))]);

    private static async Task QueueAsync(Nightwatch program, params (string Key, Instant NotAfter)[] letters)
    {
        await using var database = Open(program);
        await QueueAsync(database, letters);
    }

    private static async Task QueueAsync(Database database, (string Key, Instant NotAfter)[] letters)
    {
        await database.MigrateAsync(Cancel);
        await new OutboxStore(database).EnqueueAsync(
            [
                .. letters.Select(letter => new OutboxDraft
                {
                    DedupeKey = letter.Key,
                    MessageId = $"{letter.Key}@nightwatch.example.org",
                    Kind = "Outlook",
                    Recipient = "ilse@example.org",
                    Mime = Encoding.ASCII.GetBytes(
                        $"Subject: {letter.Key}\r\nFrom: watch@example.org\r\nTo: ilse@example.org\r\nMessage-ID: " +
                        $"<{letter.Key}@nightwatch.example.org>\r\n\r\nClear skies.\r\n"),
                    NotBefore = Now - Duration.FromDays(1),
                    NotAfter = letter.NotAfter,
                }),
            ],
            Now - Duration.FromDays(1),
            Cancel);
    }

    private static async Task KillAsync(Nightwatch program)
    {
        await using var database = Open(program);
        var outbox = new OutboxStore(database);
        foreach (var letter in await outbox.ClaimAsync(Now, 9, Duration.FromMinutes(1), Cancel))
            await outbox.CompleteAsync(letter, new SendOutcome.Dead(new(550, "5.1.1", "no such mailbox")), Now, Cancel);
    }

    private static Database Open(Nightwatch program) => Database.Open(Path.Combine(program.Folder, "nightwatch.db"));
}

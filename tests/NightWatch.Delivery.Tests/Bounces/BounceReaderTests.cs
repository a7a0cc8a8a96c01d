using System.Text;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.Logging;
using NightWatch.Delivery.Bounces;
using NightWatch.Service.Rehearsal;
using NightWatch.Store.Connections;
using NightWatch.Store.Outbox;
using NightWatch.Store.Suppression;
using NodaTime;

namespace NightWatch.Delivery.Tests.Bounces;

/// <summary>A mailbox into which anybody may write.</summary>
public sealed class BounceReaderTests : IAsyncLifetime
{
    private const string NoHeader = "\u0001 this is no header at all\n";

    private static readonly Instant Now = Instant.FromUtc(2027, 5, 25, 2, 0);

    private readonly string folder = Directory.CreateTempSubdirectory("nightwatch-bounces-").FullName;
    private Database database = null!;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        database = Database.Open(Path.Combine(folder, "kept.db"));
        await database.MigrateAsync(Cancel);
        await File.WriteAllTextAsync(Path.Combine(folder, "password"), "secret", Cancel);
        var outbox = new OutboxStore(database);
        await outbox.EnqueueAsync([.. ((string[])["ilse", "sipho"]).Select(Letter)], Now, Cancel);
        foreach (var letter in await outbox.ClaimAsync(Now, 9, Duration.FromMinutes(2), Cancel))
            await outbox.CompleteAsync(letter, new SendOutcome.Sent("ok"), Now, Cancel);
    }

    public async ValueTask DisposeAsync()
    {
        await database.DisposeAsync();
        SqliteConnection.ClearAllPools();
        Directory.Delete(folder, recursive: true);
    }

    [Theory]
    [InlineData(NoHeader)]
    [InlineData("")]
    [InlineData(": \n\n")]
    public async Task A_mail_that_cannot_be_read_is_set_aside_and_every_other_is_read(string bad)
    {
        await using var server = new ImapServer([Report("ilse"), bad, Report("sipho")]);

        var round = await Reader(server).ReadAsync(Cancel);

        Assert.Equal(new BounceRound(3, 2, 2, 0), round);
        Assert.Equal(
            ["ilse@example.org", "sipho@example.org"],
            (await new SuppressionStore(database).ListAsync(Cancel)).Select(given => given.Address));
        Assert.Equal([1, 2, 3], server.Marked.Order());
    }

    [Fact]
    public async Task What_is_set_aside_is_named_once_also_where_the_server_keeps_no_keywords()
    {
        await using var server = new ImapServer([NoHeader, Report("ilse")], keepsKeywords: false);
        var log = new Said();
        var reader = Reader(server, log);

        await reader.ReadAsync(Cancel);
        await reader.ReadAsync(Cancel);

        Assert.StartsWith(
            "The mail with uid 1 ",
            Assert.Single(log.Lines, line => line.Contains("set aside", StringComparison.Ordinal)),
            StringComparison.Ordinal);
    }

    private BounceReader Reader(ImapServer server, Said? log = null) =>
        new(
            new BounceOptions
            {
                Host = "127.0.0.1",
                Port = server.Port,
                Security = "none",
                UserName = "watch",
                PasswordFile = Path.Combine(folder, "password"),
            },
            new SuppressionStore(database),
            new VirtualClock(Now + Duration.FromHours(1)),
            log ?? new Said());

    private static OutboxDraft Letter(string who) => new()
    {
        DedupeKey = who,
        MessageId = $"{who}@nightwatch.example.org",
        Kind = "Outlook",
        Recipient = $"{who}@example.org",
        Mime = Encoding.ASCII.GetBytes("Subject: GO\r\n\r\nClear skies.\r\n"),
        NotBefore = Now,
        NotAfter = Now + Duration.FromDays(1),
    };

    private static string Report(string who) =>
        $"""
        From: MAILER-DAEMON@example.org
        Subject: Undelivered Mail Returned to Sender
        MIME-Version: 1.0
        Content-Type: multipart/report; report-type=delivery-status; boundary=b

        --b
        Content-Type: message/delivery-status

        Reporting-MTA: dns; mx.example.org

        Final-Recipient: rfc822; {who}@example.org
        Action: failed
        Status: 5.1.1

        --b
        Content-Type: text/rfc822-headers

        Message-ID: <{who}@nightwatch.example.org>

        --b--

        """;

    private sealed class Said : ILogger<BounceReader>
    {
        public List<string> Lines { get; } = [];

        public IDisposable? BeginScope<TState>(TState state)
            where TState : notnull => null;

        public bool IsEnabled(LogLevel logLevel) => true;

        public void Log<TState>(
            LogLevel logLevel,
            EventId eventId,
            TState state,
            Exception? exception,
            Func<TState, Exception?, string> formatter) => Lines.Add(formatter(state, exception));
    }
}

using System.Text;
using Microsoft.AspNetCore.Http;
using NightWatch.EndToEnd.Killing;
using NightWatch.EndToEnd.Programs;
using NightWatch.Weather.Tests.Loopback;

namespace NightWatch.EndToEnd;

/// <summary>No secret in any log, error line or answer, however much is logged and whatever fails.</summary>
public sealed class SecretsTests : IDisposable
{
    private const string Password = "Zwartberg-7-mail";
    private const string FeedKey = "Zwartberg-7-feed";
    private const string IdKey = "Zwartberg-7-thread-ids";
    private const string DatabasePassword = "Zwartberg-7-base";

    private readonly string folder = Directory.CreateTempSubdirectory("nightwatch-secrets-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public async Task A_service_that_logs_everything_and_is_refused_by_everybody_tells_none()
    {
        await using var feed = await FeedServer.StartAsync((_, http) =>
        {
            http.Response.StatusCode = 401;
            return http.Response.WriteAsync("""{"error":true,"reason":"the key is not known"}""", TestContext.Current.CancellationToken);
        });
        await using var mail = new LockedServer();
        await using var bench = new KillBench();
        await bench.OneEveningPassIsDueAsync();
        await using (var database = bench.Open()) await OperationsCommandTests.QueueAsync(database);
        await using var service = bench.Run(
            ("Feeds:Order", "open-meteo"),
            ("Feeds:Ensemble", "open-meteo-ensemble"),
            ("Feeds:Usage", "commercial"),
            ("Feeds:OpenMeteoKeyFile", Secret("feed", FeedKey)),
            ("Feeds:OpenMeteoUrl", feed.Url.ToString()),
            ("Feeds:OpenMeteoEnsembleUrl", feed.Url.ToString()),
            ("Mail:Port", mail.Port.ToString(System.Globalization.CultureInfo.InvariantCulture)),
            ("Mail:UserName", "watch"),
            ("Mail:PasswordFile", Secret("mail", Password)),
            ("Service:IdKeyFile", Secret("id", IdKey)),
            ("Logging:LogLevel:Default", "Trace"),
            ("Logging:LogLevel:Microsoft", "Trace"),
            ("Logging:LogLevel:System.Net.Http", "Trace"),
            ("Logging:LogLevel:Polly", "Trace"),
            ("Logging:LogLevel:Quartz", "Trace"));

        await KillBench.UntilAsync(
            () => Task.FromResult(feed.Seen.Count > 0 && service.Log.Contains("Mail needs an operator", StringComparison.Ordinal)),
            () => service.Log);
        await service.StopAsync();

        // The key did travel, where it belongs.
        Assert.Contains(feed.Seen, request => request.PathAndQuery.Contains(FeedKey, StringComparison.Ordinal));
        AssertTellsNone(service.Log);
    }

    [Fact]
    public async Task Commands_that_fail_tell_none()
    {
        await using var mail = new LockedServer();
        using var program = new Nightwatch();
        var (feedKey, password) = (Secret("feed", FeedKey), Secret("mail", Password));
        program.Write("appsettings.json", $$"""
            {
              "Database": {
                "Connection": "Host=127.0.0.1;Port=1;Database=nightwatch;Username=watch;Password={{DatabasePassword}};Timeout=2" },
              "Feeds": { "Order": "open-meteo", "Usage": "commercial", "OpenMeteoKeyFile": "{{feedKey}}",
                "OpenMeteoUrl": "http://127.0.0.1:1/" },
              "Mail": { "Transport": "smtp", "Host": "127.0.0.1", "Port": {{mail.Port}}, "Security": "none", "UserName": "watch",
                "PasswordFile": "{{password}}" },
              "Service": { "IdKeyFile": "{{Secret("id", IdKey)}}" }
            }
            """);

        foreach (
            var command in (string[])
                [
                    "check",
                    "check --json",
                    "check --send-test ada@example.net --dns 127.0.0.1:1",
                    "run",
                    "watch list",
                    "outbox list",
                    "backup copy.db",
                    "prune",
                ])
        {
            var ran = await program.RunAsync(command.Split(' '));

            Assert.NotEqual(0, ran.Exit);
            AssertTellsNone(ran.Output + ran.Error);
        }
    }

    private static void AssertTellsNone(string text)
    {
        foreach (var secret in (string[])[Password, FeedKey, IdKey, DatabasePassword])
        {
            Assert.DoesNotContain(secret, text, StringComparison.OrdinalIgnoreCase);
            Assert.DoesNotContain(Convert.ToBase64String(Encoding.UTF8.GetBytes(secret)), text, StringComparison.Ordinal);
        }

        // As AUTH PLAIN sends it (RFC 4616).
        Assert.DoesNotContain(Convert.ToBase64String(Encoding.UTF8.GetBytes($"\0watch\0{Password}")), text, StringComparison.Ordinal);
    }

    private string Secret(string name, string secret)
    {
        var path = Path.Combine(folder, name);
        File.WriteAllText(path, secret + "\n");
        if (!OperatingSystem.IsWindows()) File.SetUnixFileMode(path, UnixFileMode.UserRead | UnixFileMode.UserWrite);
        return path;
    }
}

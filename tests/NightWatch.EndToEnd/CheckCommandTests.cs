using NightWatch.EndToEnd.Programs;
using SmtpServer;
using SmtpServer.Authentication;
using SmtpServer.ComponentModel;

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
        Assert.DoesNotContain("WRONG", ran.Output, StringComparison.Ordinal);
        foreach (var about in (string[])["configuration", "database", "feed", "mail", "clock", "zone data"]) Assert.Contains($"ok    {about}:", ran.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_wrong_mail_password_is_told_in_one_line()
    {
        using var stop = new CancellationTokenSource();
        var services = new ServiceProvider();
        services.Add((IUserAuthenticatorFactory)new Locked());
        var port = FreePort();
        var server = new SmtpServer.SmtpServer(
            new SmtpServerOptionsBuilder().ServerName("localhost").Endpoint(endpoint => endpoint.Port(port).AllowUnsecureAuthentication().AuthenticationRequired()).Build(), services);
        var serving = server.StartAsync(stop.Token);
        using var program = new Nightwatch();
        var secret = Path.Combine(program.Folder, "secret");
        File.WriteAllText(secret, "not-the-password");
        if (!OperatingSystem.IsWindows()) File.SetUnixFileMode(secret, UnixFileMode.UserRead | UnixFileMode.UserWrite);
        program.Write("appsettings.json", $$"""
            { "Feeds": { "Order": "fake", "Usage": "private" }, "Mail": { "Transport": "smtp", "Host": "127.0.0.1", "Port": {{port}}, "Security": "none", "UserName": "watch", "PasswordFile": "{{secret}}" } }
            """);

        var ran = await program.RunAsync("check");
        await stop.CancelAsync();
        await serving;

        Assert.Equal(1, ran.Exit);
        var wrong = Assert.Single(ran.Output.Split('\n'), line => line.StartsWith("WRONG", StringComparison.Ordinal));
        Assert.StartsWith("WRONG mail:", wrong, StringComparison.Ordinal);
        Assert.DoesNotContain("not-the-password", ran.Output + ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_test_letter_goes_through_the_configured_transport()
    {
        using var program = new Nightwatch();
        program.Write("appsettings.json", """
            { "Feeds": { "Order": "fake", "Usage": "private" }, "Mail": { "From": "NightWatch <watch@example.org>" }, "Service": { "ListUnsubscribe": "https://night.example.org/stop/7" } }
            """);

        var ran = await program.RunAsync("check", "--send-test", "ada@example.net");

        Assert.True(ran.Exit == 0, ran.Output + ran.Error);
        Assert.Contains("ok    test letter: written to", ran.Output, StringComparison.Ordinal);
        var letter = await MimeKit.MimeMessage.LoadAsync(Assert.Single(Directory.GetFiles(Path.Combine(program.Folder, "letters"), "*.eml")), TestContext.Current.CancellationToken);
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
        program.Write("appsettings.json", $$"""{ "Feeds": { "Order": "met-norway", "Usage": "private", "Contact": "operator@example.org", "MetNorwayUrl": "http://127.0.0.1:{{FreePort()}}/" } }""");

        var ran = await program.RunAsync("check");

        Assert.Equal(1, ran.Exit);
        Assert.StartsWith("WRONG feed: met-norway", Assert.Single(ran.Output.Split('\n'), line => line.StartsWith("WRONG", StringComparison.Ordinal)), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Every_fault_of_the_configuration_gets_its_line()
    {
        using var program = new Nightwatch();
        program.Write("appsettings.json", """{ "Feeds": { "Order": "fake", "Usage": "private" }, "Service": { "Port": 70000, "TickSeconds": 0 } }""");

        var ran = await program.RunAsync("check");

        Assert.Equal(1, ran.Exit);
        Assert.Contains("WRONG configuration: Service:Port", ran.Output, StringComparison.Ordinal);
        Assert.Contains("WRONG configuration: Service:TickSeconds", ran.Output, StringComparison.Ordinal);
    }

    private static int FreePort()
    {
        using var listener = new System.Net.Sockets.TcpListener(System.Net.IPAddress.Loopback, 0);
        listener.Start();
        return ((System.Net.IPEndPoint)listener.LocalEndpoint).Port;
    }

    /// <summary>Lets nobody in.</summary>
    private sealed class Locked : IUserAuthenticator, IUserAuthenticatorFactory
    {
        public Task<bool> AuthenticateAsync(ISessionContext context, string user, string password, CancellationToken cancellationToken) => Task.FromResult(false);

        public IUserAuthenticator CreateInstance(ISessionContext context) => this;
    }
}

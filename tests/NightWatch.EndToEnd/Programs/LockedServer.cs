using NightWatch.Weather.Tests.Loopback;
using SmtpServer;
using SmtpServer.Authentication;
using SmtpServer.ComponentModel;

namespace NightWatch.EndToEnd.Programs;

/// <summary>A mail server that asks for a password and likes none.</summary>
internal sealed class LockedServer : IAsyncDisposable
{
    private readonly CancellationTokenSource stop = new();
    private readonly Task serving;

    public LockedServer()
    {
        var services = new ServiceProvider();
        services.Add((IUserAuthenticatorFactory)new Locked());
        var options = new SmtpServerOptionsBuilder()
            .ServerName("localhost")
            .Endpoint(endpoint => endpoint.Port(Port).AllowUnsecureAuthentication().AuthenticationRequired())
            .Build();
        serving = new SmtpServer.SmtpServer(options, services).StartAsync(stop.Token);
    }

    public int Port { get; } = FreePort.Take();

    public async ValueTask DisposeAsync()
    {
        await stop.CancelAsync();
        await serving;
        stop.Dispose();
    }

    private sealed class Locked : IUserAuthenticator, IUserAuthenticatorFactory
    {
        public Task<bool> AuthenticateAsync(ISessionContext context, string user, string password, CancellationToken cancellationToken) =>
            Task.FromResult(false);

        public IUserAuthenticator CreateInstance(ISessionContext context) => this;
    }
}

using System.Buffers;
using System.Net;
using MimeKit;
using NightWatch.Weather.Tests.Loopback;
using SmtpServer;
using SmtpServer.Protocol;
using SmtpServer.Storage;
using SmtpResponse = SmtpServer.Protocol.SmtpResponse;

namespace NightWatch.EndToEnd.Browsing;

/// <summary>A real SMTP server (the SmtpServer library) on loopback that keeps what it accepts.</summary>
internal sealed class MailSink : MessageStore, IAsyncDisposable
{
    private readonly CancellationTokenSource over = new();
    private readonly List<byte[]> received = [];
    private readonly Task running;

    public MailSink()
    {
        var parts = new SmtpServer.ComponentModel.ServiceProvider();
        parts.Add(this);
        var options = new SmtpServerOptionsBuilder()
            .ServerName("localhost")
            .Endpoint(endpoint => endpoint.Endpoint(new IPEndPoint(IPAddress.Loopback, Port)))
            .Build();
        running = new global::SmtpServer.SmtpServer(options, parts).StartAsync(over.Token);
    }

    public int Port { get; } = FreePort.Take();

    /// <summary>Letters accepted so far, in order.</summary>
    public IReadOnlyList<MimeMessage> Letters
    {
        get
        {
            lock (received) return [.. received.Select(bytes => MimeMessage.Load(new MemoryStream(bytes)))];
        }
    }

    public override Task<SmtpResponse> SaveAsync(
        ISessionContext context, IMessageTransaction transaction, ReadOnlySequence<byte> buffer, CancellationToken cancellationToken)
    {
        lock (received) received.Add(buffer.ToArray());
        return Task.FromResult(new SmtpResponse(SmtpReplyCode.Ok, "2.0.0 queued"));
    }

    public async ValueTask DisposeAsync()
    {
        await over.CancelAsync();
        try
        {
            await running;
        }
        catch (OperationCanceledException)
        {
        }

        over.Dispose();
    }
}

using NightWatch.Delivery.Mail;
using NightWatch.Store.Outbox;

namespace NightWatch.Delivery.Webhooks;

/// <summary>Hands each letter to the transport of its channel.</summary>
internal sealed class ChannelTransport(IMailTransport mail, IMailTransport calls) : IMailTransport, IAsyncDisposable
{
    public Task<Handover> SendAsync(OutboxLetter letter, CancellationToken cancellationToken) =>
        (letter.Channel == LetterChannel.Webhook ? calls : mail).SendAsync(letter, cancellationToken);

    public Task<string?> CheckAsync(CancellationToken cancellationToken) => mail.CheckAsync(cancellationToken);

    public async ValueTask DisposeAsync()
    {
        if (mail is IAsyncDisposable closing) await closing.DisposeAsync();
        (calls as IDisposable)?.Dispose();
    }
}

using NightWatch.Service.Mail;
using NightWatch.Store.Outbox;

namespace NightWatch.Service.Tests.Outbox;

/// <summary>Delivers, or fails, as each test says; keeps what it was given.</summary>
internal sealed class ScriptedTransport : IMailTransport
{
    public List<OutboxLetter> Given { get; } = [];

    public Func<OutboxLetter, CancellationToken, Task<Delivery>> Answer { get; set; } = (letter, _) => Task.FromResult<Delivery>(new Delivery.Accepted($"queued {letter.Id}"));

    public static Delivery Fails(FailureClass @class, int? code = null) => new Delivery.Failed(@class, new(code, null, $"{@class} {code}"));

    public void Always(Delivery delivery) => Answer = (_, _) => Task.FromResult(delivery);

    public Task<Delivery> SendAsync(OutboxLetter letter, CancellationToken cancellationToken)
    {
        lock (Given) Given.Add(letter);
        return Answer(letter, cancellationToken);
    }

    public Task<string?> CheckAsync(CancellationToken cancellationToken) => Task.FromResult<string?>(null);
}

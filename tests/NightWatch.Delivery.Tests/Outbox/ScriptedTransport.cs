using NightWatch.Delivery.Mail;
using NightWatch.Store.Outbox;

namespace NightWatch.Delivery.Tests.Outbox;

/// <summary>Delivers, or fails, as each test says; keeps what it was given.</summary>
internal sealed class ScriptedTransport : IMailTransport
{
    public List<OutboxLetter> Given { get; } = [];

    public Func<OutboxLetter, CancellationToken, Task<Handover>> Answer { get; set; } =
        (letter, _) => Task.FromResult<Handover>(new Handover.Accepted($"queued {letter.Id}"));

    public static Handover Fails(FailureClass @class, int? code = null) => new Handover.Failed(@class, new(code, null, $"{@class} {code}"));

    public void Always(Handover delivery) => Answer = (_, _) => Task.FromResult(delivery);

    public Task<Handover> SendAsync(OutboxLetter letter, CancellationToken cancellationToken)
    {
        lock (Given) Given.Add(letter);
        return Answer(letter, cancellationToken);
    }

    public Task<string?> CheckAsync(CancellationToken cancellationToken) => Task.FromResult<string?>(null);
}

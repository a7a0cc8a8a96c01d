using NightWatch.Store.Outbox;
using NightWatch.Store.Suppression;

namespace NightWatch.Delivery.Mail;

/// <summary>Carries one letter to one recipient. What the world does is a result; it never throws for it.</summary>
public interface IMailTransport
{
    /// <summary>Tries once.</summary>
    Task<Handover> SendAsync(OutboxLetter letter, CancellationToken cancellationToken);

    /// <summary>Connects, secures, authenticates and goes away again, for the check command.</summary>
    /// <returns>Null: all well. Else one sentence that says what is wrong.</returns>
    Task<string?> CheckAsync(CancellationToken cancellationToken);
}

/// <summary>What came of one try. Closed.</summary>
public abstract record Handover
{
    private Handover()
    {
    }

    /// <summary>The server has it.</summary>
    public sealed record Accepted(string ServerText) : Handover;

    /// <summary>It does not, or nobody knows.</summary>
    public sealed record Failed(FailureClass Class, ServerReply Reply) : Handover;
}

/// <summary>Whose fault a failure is, and so what to do about it.</summary>
public enum FailureClass
{
    /// <summary>This letter, now: try it again later.</summary>
    Transient,

    /// <summary>This letter, for good.</summary>
    Permanent,

    /// <summary>The connection broke after the server had asked for the text: it may have the letter or not.</summary>
    Ambiguous,

    /// <summary>The server or the way to it: the whole queue waits, no letter is charged.</summary>
    Server,

    /// <summary>The configuration: the whole queue waits, and an operator must act.</summary>
    Configuration,
}

using NightWatch.Delivery.Mail;
using NightWatch.Store.Outbox;
using NightWatch.Store.Subscribers;
using NodaTime;

namespace NightWatch.Delivery.Outbox;

/// <summary>What the limits of letters a minute say to a letter about to leave.</summary>
internal enum SendAllowance
{
    /// <summary>It may leave; the use is counted.</summary>
    Free,

    /// <summary>The domain of its address has had its letters for this minute; others may leave.</summary>
    DomainSpent,

    /// <summary>The mail server has had its letters for this minute.</summary>
    ServerSpent,
}

/// <summary>
/// Keeps letters a minute within what the mail server and the domains of the addresses put up with. Counted in the database, so that
/// any number of processes together keep one limit; every try counts, also a refused one.
/// </summary>
internal sealed class SendRate(RationStore rations, MailOptions options)
{
    /// <summary>Among the keys of all that is rationed.</summary>
    private const string Server = "mail server";

    private static readonly Duration Minute = Duration.FromMinutes(1);

    /// <summary>The domain of the letter's address, lower case.</summary>
    public static string DomainOf(OutboxLetter letter) => letter.Recipient[(letter.Recipient.LastIndexOf('@') + 1)..].ToLowerInvariant();

    /// <summary>Takes one use of each limit that is set, or none.</summary>
    public async Task<SendAllowance> TakeAsync(OutboxLetter letter, Instant now, CancellationToken cancellationToken)
    {
        if (!options.IsSmtp || letter.Channel != LetterChannel.Mail) return SendAllowance.Free;
        var uses = new List<(string Key, IReadOnlyList<Ration> Rations)>();
        if (options.MostPerMinutePerDomain > 0)
            uses.Add(($"{Server} for {DomainOf(letter)}", [new Ration(Minute, options.MostPerMinutePerDomain)]));
        if (options.MostPerMinute > 0) uses.Add((Server, [new Ration(Minute, options.MostPerMinute)]));
        if (uses.Count == 0) return SendAllowance.Free;
        return await rations.TakeAsync(uses, now, cancellationToken) switch
        {
            null => SendAllowance.Free,
            Server => SendAllowance.ServerSpent,
            _ => SendAllowance.DomainSpent,
        };
    }

    /// <summary>When a letter's turn comes that the limit of its domain holds back.</summary>
    /// <param name="before">How many of the same domain are held back already and go first.</param>
    /// <param name="now">The clock reading.</param>
    public Instant TurnOf(int before, Instant now) => now + (1 + (before / options.MostPerMinutePerDomain)) * Minute;
}

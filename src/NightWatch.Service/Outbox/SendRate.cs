using NightWatch.Service.Mail;
using NightWatch.Store.Outbox;
using NightWatch.Store.Subscribers;
using NodaTime;

namespace NightWatch.Service.Outbox;

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
    private static readonly Duration Minute = Duration.FromMinutes(1);

    /// <summary>The domain of the letter's address, lower case.</summary>
    public static string DomainOf(OutboxLetter letter) => letter.Recipient[(letter.Recipient.LastIndexOf('@') + 1)..].ToLowerInvariant();

    /// <summary>Takes one use of each limit that is set.</summary>
    public async Task<SendAllowance> TakeAsync(OutboxLetter letter, Instant now, CancellationToken cancellationToken)
    {
        if (!options.IsSmtp || letter.Channel != LetterChannel.Mail) return SendAllowance.Free;

        // The domain first: a letter it holds back must not use up what the server could take of others.
        if (!await TakeAsync($"letters to {DomainOf(letter)}", options.MostPerMinutePerDomain, now, cancellationToken)) return SendAllowance.DomainSpent;
        return await TakeAsync("letters", options.MostPerMinute, now, cancellationToken) ? SendAllowance.Free : SendAllowance.ServerSpent;
    }

    /// <summary>When a letter's turn comes that the limit of its domain holds back.</summary>
    /// <param name="before">How many of the same domain are held back already and go first.</param>
    /// <param name="now">When.</param>
    public Instant TurnOf(int before, Instant now) => now + (1 + (before / options.MostPerMinutePerDomain)) * Minute;

    private async Task<bool> TakeAsync(string what, int most, Instant now, CancellationToken cancellationToken) =>
        most == 0 || await rations.TakeAsync(what, [new Ration(Minute, most)], now, cancellationToken);
}

using System.Data.Common;
using MailKit;
using MailKit.Net.Imap;
using MailKit.Search;
using NightWatch.Delivery.Mail;
using NightWatch.Store.Suppression;
using NightWatch.Watchkeeping.Timing;
using NodaTime;

namespace NightWatch.Delivery.Bounces;

/// <summary>What one look into the mailbox found.</summary>
/// <param name="Read">Messages looked at.</param>
/// <param name="Noted">Reports about letters of ours.</param>
/// <param name="Suppressed">Addresses given up by them.</param>
/// <param name="Ignored">Reports that name no letter of ours to that recipient: foreign or forged.</param>
internal sealed record BounceRound(int Read, int Noted, int Suppressed, int Ignored);

/// <summary>
/// Reads reports about letters from the sender's mailbox. The mailbox may be a person's too: nothing is deleted or marked as read there;
/// what was looked at bears a keyword of ours, or where a server keeps none is looked at again, which changes nothing.
/// </summary>
internal sealed partial class BounceReader(BounceOptions options, SuppressionStore suppression, IClock clock, ILogger<BounceReader> log)
{
    private const string Seen = "$NightWatchRead";
    private const int MostAtOnce = 200;
    private const uint MostBytes = 1 << 20;
    private static readonly Duration LettersAge = Duration.FromDays(8);
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(2);

    // A server that keeps no keywords would show the same reports again at every look.
    private readonly HashSet<UniqueId> setAside = [];

    private Instant? looked;

    /// <summary>Looks where it is time to; what the server does wrong is logged and never thrown.</summary>
    public async Task ReadDueAsync(CancellationToken stop)
    {
        var now = clock.GetCurrentInstant();
        if (!options.IsSet || !NowAndThen.IsTime(looked, Duration.FromMinutes(options.EveryMinutes), now)) return;
        looked = now;
        try
        {
            var round = await ReadAsync(stop);
            if (round.Read > 0) LogRound(round.Read, round.Noted, round.Suppressed, round.Ignored);
        }
        catch (Exception fault) when (fault is not DbException && !stop.IsCancellationRequested)
        {
            LogUnreadable(Redaction.Of(fault.Message));
        }
    }

    /// <summary>Looks now.</summary>
    internal async Task<BounceRound> ReadAsync(CancellationToken stop)
    {
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(stop);
        patience.CancelAfter(Patience);
        using var client = new ImapClient();
        if (options.CaFile.Length > 0) client.ServerCertificateValidationCallback = PrivateAuthority.Read(options.CaFile).Accepts;
        await client.ConnectAsync(options.Host, options.Port, MailSecurity.Of(options.Security), patience.Token);
        await client.AuthenticateAsync(options.UserName, SecretFile.Read(options.PasswordFile), patience.Token);
        var folder = await client.GetFolderAsync(options.Folder, patience.Token);
        await folder.OpenAsync(FolderAccess.ReadWrite, patience.Token);
        var round = await ReadAsync(folder, patience.Token);
        await client.DisconnectAsync(true, patience.Token);
        return round;
    }

    private async Task<BounceRound> ReadAsync(IMailFolder folder, CancellationToken stop)
    {
        var now = clock.GetCurrentInstant();
        var since = now - LettersAge;
        var fresh = await folder.SearchAsync(
            SearchQuery.NotKeyword(Seen).And(SearchQuery.DeliveredAfter(since.ToDateTimeUtc().Date)), stop);
        UniqueId[] uids = [.. fresh.TakeLast(MostAtOnce)];
        if (uids.Length == 0) return new BounceRound(0, 0, 0, 0);
        var (noted, suppressed, ignored) = (0, 0, 0);
        foreach (var item in await folder.FetchAsync(uids, MessageSummaryItems.UniqueId | MessageSummaryItems.Size, stop))
        {
            // A report returns a header or a letter of ours, so a larger message is no report.
            if (item.Size > MostBytes || setAside.Contains(item.UniqueId)) continue;
            try
            {
                foreach (var report in DeliveryReport.Of(await folder.GetMessageAsync(item.UniqueId, stop)))
                {
                    switch (await suppression.ReportAsync(report.MessageId, report.Recipient, report.Reply, since, now, stop))
                    {
                        case BounceOutcome.Suppressed:
                            suppressed++;
                            LogSuppressed(Redaction.Of(report.Recipient), report.Reply.Enhanced ?? "", report.Reply.Text);
                            break;
                        case BounceOutcome.Noted:
                            noted++;
                            break;
                        default:
                            ignored++;
                            break;
                    }
                }
            }
            catch (Exception fault) when (folder.IsOpen && IsOfTheMail(fault))
            {
                // Anybody can send such a message, so it is marked as seen like the others.
                setAside.Add(item.UniqueId);
                LogSetAside(item.UniqueId.Id, Redaction.Of(fault.Message));
            }
        }

        if (folder.PermanentFlags.HasFlag(MessageFlags.UserDefined))
            await folder.StoreAsync(uids, new StoreFlagsRequest(StoreAction.Add, [Seen]) { Silent = true }, stop);
        return new BounceRound(uids.Length, noted + suppressed, suppressed, ignored);
    }

    /// <summary>
    /// What one mail's text brings about, and not the server, the database or the stop. A database's "data exception" (SQLSTATE 22) refuses
    /// that text.
    /// </summary>
    private static bool IsOfTheMail(Exception fault) =>
        fault switch
        {
            DbException database => database.SqlState?.StartsWith("22", StringComparison.Ordinal) == true,
            OperationCanceledException
            or IOException
            or ProtocolException
            or ServiceNotConnectedException
            or ServiceNotAuthenticatedException
            or OutOfMemoryException => false,
            _ => true,
        };

    [LoggerMessage(324, LogLevel.Warning, "The mail with uid {Uid} in the mailbox of reports cannot be read and is set aside: {Fault}")]
    private partial void LogSetAside(uint uid, string fault);

    [LoggerMessage(
        321,
        LogLevel.Information,
        "Reports read: {Read} messages, {Noted} about our letters, {Suppressed} addresses given up, {Ignored} about no letter of ours")]
    private partial void LogRound(int read, int noted, int suppressed, int ignored);

    [LoggerMessage(322, LogLevel.Warning, "{Address} gets no letters any more, status {Status}: {Words}")]
    private partial void LogSuppressed(string address, string status, string words);

    [LoggerMessage(323, LogLevel.Warning, "The mailbox of reports cannot be read: {Fault}")]
    private partial void LogUnreadable(string fault);
}

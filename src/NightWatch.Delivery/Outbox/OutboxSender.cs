using System.Data.Common;
using System.Diagnostics;
using NightWatch.Delivery.Mail;
using NightWatch.Store.Outbox;
using NightWatch.Watchkeeping.Measuring;
using NightWatch.Watchkeeping.Timing;
using NodaTime;

namespace NightWatch.Delivery.Outbox;

/// <summary>What one round did.</summary>
public sealed record SendRound(int Sent, int Retried, int Dead, int Expired, int Postponed)
{
    public static SendRound Nothing { get; } = new(0, 0, 0, 0, 0);
}

/// <summary>Sends what is queued: claims, re-checks, sends one at a time, writes down what came of it.</summary>
internal sealed partial class OutboxSender(
    OutboxStore outbox,
    IMailTransport transport,
    SendRate rate,
    OutboxOptions options,
    IClock clock,
    TimeProvider time,
    Telemetry telemetry,
    ILogger<OutboxSender> log) : IDisposable
{
    private readonly SemaphoreSlim oneRound = new(1);
    private readonly Dictionary<LetterChannel, QueuePause> pauses = Enum.GetValues<LetterChannel>()
        .ToDictionary(channel => channel, _ => new QueuePause());

    private Duration Lease => Duration.FromSeconds(options.LeaseSeconds);

    /// <summary>
    /// Sends until nothing may be sent now. On a stop request the letter in hand is finished, the others are given back. A second call
    /// while one round is under way does nothing.
    /// </summary>
    public async Task<SendRound> SendDueAsync(CancellationToken cancellationToken)
    {
        if (!await oneRound.WaitAsync(0, CancellationToken.None)) return SendRound.Nothing;
        try
        {
            using var drained = new CancellationTokenSource();
            using var stopping = cancellationToken.Register(() => drained.CancelAfter(TimeSpan.FromSeconds(options.DrainSeconds)));
            var round = await RoundAsync(cancellationToken, drained.Token);
            if (round != SendRound.Nothing) LogRound(round.Sent, round.Retried, round.Dead, round.Expired, round.Postponed);
            return round;
        }
        finally
        {
            oneRound.Release();
        }
    }

    public void Dispose() => oneRound.Dispose();

    private async Task<SendRound> RoundAsync(CancellationToken stop, CancellationToken drained)
    {
        var round = new Tally();
        foreach (var late in await outbox.ExpireAsync(clock.GetCurrentInstant(), stop))
        {
            round.Add(new SendOutcome.Expired());
            telemetry.Letter(late.Kind, OutcomeWord(new SendOutcome.Expired()));
            LogExpired(late.Id, late.Kind, late.NotAfter);
        }

        // Each channel is sent on its own, so that a mail server that is away holds back mail alone.
        foreach (var channel in Enum.GetValues<LetterChannel>())
        {
            while (!stop.IsCancellationRequested && MaySend(channel))
            {
                // A stop does not cut the claim short: we must know what we claimed, or we cannot give it back.
                var batch = await outbox.ClaimAsync(clock.GetCurrentInstant(), options.Batch, Lease, channel, CancellationToken.None);
                if (batch.Count == 0 || !await SendBatchAsync(batch, round, stop, drained)) break;
            }
        }

        foreach (var (domain, letters) in round.HeldBack) LogDomainSpent(letters, domain);
        return round.ToRound();
    }

    private bool MaySend(LetterChannel channel) => clock.GetCurrentInstant() >= pauses[channel].Until;

    /// <returns>False: the mail server has had its letters for this minute.</returns>
    private async Task<bool> SendBatchAsync(
        IReadOnlyList<OutboxLetter> batch, Tally round, CancellationToken stop, CancellationToken drained)
    {
        IReadOnlyCollection<OutboxLetter> left = batch;
        var more = true;
        await using (new LeaseHeartbeat(Lease, time, beat => outbox.RenewAsync(left, clock.GetCurrentInstant(), Lease, beat)))
        {
            for (var next = 0; next < batch.Count && !stop.IsCancellationRequested && MaySend(batch[next].Channel); next++)
            {
                more = await SendOneAsync(batch[next], round, drained);
                if (!more) break;
                left = [.. batch.Skip(next + 1)];
            }
        }

        if (left.Count > 0) await outbox.ReleaseAsync(left, CancellationToken.None);
        return more;
    }

    /// <returns>False: it was not tried, since the mail server has had its letters for this minute.</returns>
    private async Task<bool> SendOneAsync(OutboxLetter letter, Tally round, CancellationToken drained)
    {
        // Before the letter leaves it is asked once more whether it is still ours, still wanted and still in time.
        var now = clock.GetCurrentInstant();
        if (await outbox.RenewAsync([letter], now, Lease, CancellationToken.None) == 0)
        {
            LogWithdrawn(letter.Id, letter.Kind);
            return true;
        }

        if (await TryAsync(letter, round, now, drained) is not { } outcome) return false;
        round.Add(outcome);
        telemetry.Letter(letter.Kind, OutcomeWord(outcome));
        if (!await WriteDownAsync(letter, outcome)) LogOvertaken(letter.Id, letter.Kind);
        Log(letter, outcome);
        return true;
    }

    /// <returns>Null: the mail server has had its letters for this minute.</returns>
    private async Task<SendOutcome?> TryAsync(OutboxLetter letter, Tally round, Instant now, CancellationToken drained)
    {
        if (letter.NotAfter < now) return new SendOutcome.Expired();
        return await rate.TakeAsync(letter, now, CancellationToken.None) switch
        {
            SendAllowance.ServerSpent => null,
            SendAllowance.DomainSpent => new SendOutcome.HeldBack(rate.TurnOf(round.HoldBack(SendRate.DomainOf(letter)), now)),
            _ => await HandAsync(letter, drained),
        };
    }

    private async Task<SendOutcome> HandAsync(OutboxLetter letter, CancellationToken drained)
    {
        using var timer = telemetry.Begin(Stage.Send);
        var start = Stopwatch.GetTimestamp();
        var outcome = Decide(letter, await transport.SendAsync(letter, drained));
        telemetry.Handed(OutcomeWord(outcome), Stopwatch.GetElapsedTime(start));
        timer.Mark(Telemetry.OutcomeKey, OutcomeWord(outcome));
        return outcome;
    }

    private static string OutcomeWord(SendOutcome outcome) => outcome.GetType().Name.ToLowerInvariant();

    private SendOutcome Decide(OutboxLetter letter, Handover delivery)
    {
        var now = clock.GetCurrentInstant();
        var pause = pauses[letter.Channel];
        if (delivery is Handover.Accepted accepted)
        {
            pause.Clear();
            return new SendOutcome.Sent(accepted.ServerText);
        }

        var (what, reply) = (Handover.Failed)delivery;
        switch (what)
        {
            case FailureClass.Server:
                return new SendOutcome.Postponed(pause.Away(now), reply);
            case FailureClass.Configuration:
                LogOperatorMustAct(reply.Text);
                return new SendOutcome.Postponed(pause.Misconfigured(now), reply);
            case FailureClass.Permanent:
                pause.Clear();
                return new SendOutcome.Dead(reply, Refused: reply.Code is 550 or 551 or 553 or 556);
            case FailureClass.Ambiguous when letter.AmbiguousCount >= RetrySchedule.MostAmbiguousResends:
                return new SendOutcome.Dead(reply with { Text = "ambiguous: " + reply.Text });
            case FailureClass.Ambiguous:
                return new SendOutcome.Ambiguous(RetrySchedule.AfterAmbiguous(now, letter.NotAfter), reply);
        }

        // The server is there and answers; but 421 means "not so fast", to all of us.
        if (reply.Code == 421) pause.Away(now);
        else pause.Clear();
        return letter.Attempt >= RetrySchedule.MostAttempts
            ? new SendOutcome.Dead(reply)
            : new SendOutcome.Retry(
                RetrySchedule.Next(letter.Id, letter.Attempt, now, letter.NotAfter, greylisted: reply.Code == 450), reply);
    }

    /// <summary>The letter is out; losing the record of it would send it again, so the database gets some more chances.</summary>
    private async Task<bool> WriteDownAsync(OutboxLetter letter, SendOutcome outcome)
    {
        for (var wait = TimeSpan.FromSeconds(1); ; wait *= 2)
        {
            try
            {
                return await outbox.CompleteAsync(letter, outcome, clock.GetCurrentInstant(), CancellationToken.None);
            }
            catch (DbException fault) when (wait <= TimeSpan.FromSeconds(8))
            {
                LogDatabaseAway(letter.Id, fault.Message);
                await Task.Delay(wait, time, CancellationToken.None);
            }
        }
    }

    private void Log(OutboxLetter letter, SendOutcome outcome)
    {
        switch (outcome)
        {
            case SendOutcome.Sent sent:
                LogSent(letter.Id, letter.Kind, letter.Attempt, sent.ServerText);
                break;
            case SendOutcome.Retry retry:
                LogRetry(letter.Id, letter.Kind, letter.Attempt, retry.At, retry.Reply.Text);
                break;
            case SendOutcome.Ambiguous unknown:
                LogRetry(letter.Id, letter.Kind, letter.Attempt, unknown.At, unknown.Reply.Text);
                break;
            case SendOutcome.Postponed postponed:
                LogPaused(postponed.Until, postponed.Reply.Text);
                break;
            case SendOutcome.Dead dead:
                LogDead(letter.Id, letter.Kind, letter.Attempt, dead.Reply.Text);
                break;
            case SendOutcome.Expired:
                LogExpired(letter.Id, letter.Kind, letter.NotAfter);
                break;
        }
    }

    private sealed class Tally
    {
        private readonly Dictionary<Type, int> counts = [];

        private readonly Dictionary<string, int> heldBack = [];

        /// <summary>Letters held back in this round, by domain.</summary>
        public IReadOnlyDictionary<string, int> HeldBack => heldBack;

        public void Add(SendOutcome outcome) => counts[outcome.GetType()] = Of(outcome.GetType()) + 1;

        public SendRound ToRound() => new(
            Of(typeof(SendOutcome.Sent)), Of(typeof(SendOutcome.Retry)) + Of(typeof(SendOutcome.Ambiguous)), Of(typeof(SendOutcome.Dead)),
            Of(typeof(SendOutcome.Expired)), Of(typeof(SendOutcome.Postponed)) + Of(typeof(SendOutcome.HeldBack)));

        /// <returns>How many of the domain were held back before.</returns>
        public int HoldBack(string domain)
        {
            var before = heldBack.GetValueOrDefault(domain);
            heldBack[domain] = before + 1;
            return before;
        }

        private int Of(Type type) => counts.GetValueOrDefault(type);
    }
}

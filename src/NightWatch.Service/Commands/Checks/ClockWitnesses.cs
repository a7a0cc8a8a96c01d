using System.Diagnostics;
using NodaTime;

namespace NightWatch.Service.Commands.Checks;

/// <summary>
/// Compares our clock with the Date header (RFC 9110, 6.6.1) of every answer that comes over HTTP. The header has whole seconds and is
/// made somewhere between question and answer, so each comparison has an uncertainty of its own.
/// </summary>
internal sealed class ClockWitnesses(IClock clock)
{
    private readonly Instant began = clock.GetCurrentInstant();
    private readonly long beganTicks = Stopwatch.GetTimestamp();
    private readonly List<Witness> heard = [];

    /// <summary>The most exact comparison; null: nobody said what time it is.</summary>
    public Witness? Best
    {
        get
        {
            lock (heard) return heard.MinBy(witness => witness.Uncertainty);
        }
    }

    /// <summary>How far our clock went other than the machine's monotonic one since the check began: somebody set it meanwhile.</summary>
    public Duration Jumped => clock.GetCurrentInstant() - began - Duration.FromTimeSpan(Stopwatch.GetElapsedTime(beganTicks));

    /// <summary>A handler for HTTP clients that listens to the answers.</summary>
    public DelegatingHandler Listener() => new Handler(this);

    /// <summary>Notes an answer.</summary>
    /// <param name="who">The host that answered.</param>
    /// <param name="date">Its Date, plus the Age where a cache on the way says how long ago that was.</param>
    /// <param name="asked">Our clock at the question.</param>
    /// <param name="answered">Our clock at the answer.</param>
    public void Note(string who, Instant date, Instant asked, Instant answered)
    {
        // The header's second began up to a second before it was written.
        var half = Duration.FromMilliseconds(500);
        var middle = asked + ((answered - asked) / 2);
        lock (heard) heard.Add(new Witness(who, middle - (date + half), ((answered - asked) / 2) + half));
    }

    /// <summary>One comparison.</summary>
    /// <param name="Who">The host.</param>
    /// <param name="Ahead">How far our clock is ahead of its; negative: behind.</param>
    /// <param name="Uncertainty">Either way.</param>
    public sealed record Witness(string Who, Duration Ahead, Duration Uncertainty)
    {
        /// <summary>The least that the clocks differ whatever the uncertainty hides.</summary>
        public Duration AtLeast => Duration.Max(Duration.Zero, (Ahead < Duration.Zero ? -Ahead : Ahead) - Uncertainty);
    }

    private sealed class Handler(ClockWitnesses witnesses) : DelegatingHandler
    {
        protected override async Task<HttpResponseMessage> SendAsync(HttpRequestMessage request, CancellationToken cancellationToken)
        {
            var asked = witnesses.Now;
            var answer = await base.SendAsync(request, cancellationToken);
            if (answer.Headers.Date is { } date)
                witnesses.Note(
                    request.RequestUri?.Host ?? "a server",
                    Instant.FromDateTimeOffset(date) + Duration.FromTimeSpan(answer.Headers.Age ?? TimeSpan.Zero),
                    asked,
                    witnesses.Now);
            return answer;
        }
    }

    private Instant Now => clock.GetCurrentInstant();
}

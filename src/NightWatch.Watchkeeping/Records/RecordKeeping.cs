using NightWatch.Watchkeeping.Timing;
using NodaTime;

namespace NightWatch.Watchkeeping.Records;

/// <summary>
/// What the service does for its own score, now and then, beside the passes. It fails without consequence: the record waits.
/// </summary>
internal sealed partial class RecordKeeping(OutcomeRecorder recorder, ChanceLearner learner, ILogger<RecordKeeping> log)
{
    private static readonly Duration RecordEvery = Duration.FromHours(3);
    private static readonly Duration LearnEvery = Duration.FromHours(24);

    private Instant? recorded;
    private Instant? learnt;

    /// <summary>Does what is due.</summary>
    public async Task RunAsync(Instant now, CancellationToken stop)
    {
        try
        {
            if (NowAndThen.IsTime(recorded, RecordEvery, now))
            {
                recorded = now;
                if (await recorder.RecordAsync(now, stop) is > 0 and var kept) LogRecorded(kept);
            }

            if (NowAndThen.IsTime(learnt, LearnEvery, now))
            {
                learnt = now;
                await learner.LearnAsync(now, stop);
            }
        }
        catch (Exception failure) when (failure is not OperationCanceledException)
        {
            LogFailed(failure);
        }
    }

    [LoggerMessage(251, LogLevel.Information, "{Kept} outcomes of nights that are over written down")]
    private partial void LogRecorded(int kept);

    [LoggerMessage(252, LogLevel.Error, "The record could not be kept and waits for the next time")]
    private partial void LogFailed(Exception failure);
}

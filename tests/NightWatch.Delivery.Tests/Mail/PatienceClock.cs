using Microsoft.Extensions.Time.Testing;

namespace NightWatch.Delivery.Tests.Mail;

/// <summary>A clock moved by hand that tells how long somebody is ready to wait now: what a timer of it was last set to.</summary>
internal sealed class PatienceClock : FakeTimeProvider
{
    private volatile Patience last = new(default, default);

    /// <summary>The newest setting.</summary>
    public Patience Last => last;

    public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period)
    {
        var timer = new SetTimer(this, base.CreateTimer(callback, state, dueTime, period));
        Note(dueTime);
        return timer;
    }

    private void Note(TimeSpan dueTime)
    {
        if (dueTime <= TimeSpan.Zero) return;
        var before = last;
        last = new(GetUtcNow(), dueTime);
        before.SetAnew();
    }

    /// <param name="From">When it was set.</param>
    /// <param name="Lasts">How long it lasts.</param>
    internal sealed record Patience(DateTimeOffset From, TimeSpan Lasts)
    {
        private readonly TaskCompletionSource over = new(TaskCreationOptions.RunContinuationsAsynchronously);

        /// <summary>A newer one has taken its place.</summary>
        public Task Over => over.Task;

        public void SetAnew() => over.TrySetResult();
    }

    private sealed class SetTimer(PatienceClock clock, ITimer timer) : ITimer
    {
        public bool Change(TimeSpan dueTime, TimeSpan period)
        {
            var changed = timer.Change(dueTime, period);
            clock.Note(dueTime);
            return changed;
        }

        public void Dispose() => timer.Dispose();

        public ValueTask DisposeAsync() => timer.DisposeAsync();
    }
}

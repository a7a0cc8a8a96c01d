using Microsoft.Extensions.Time.Testing;

namespace NightWatch.Service.Tests.Mail;

internal static class FakeTimeProviderExtensions
{
    /// <summary>Lets the fake clock run for as long as the work waits for it, at most ten minutes of its time.</summary>
    public static async Task<T> RunAsync<T>(this FakeTimeProvider time, Task<T> work)
    {
        for (var second = 0; second < 600 && !work.IsCompleted; second++)
        {
            time.Advance(TimeSpan.FromSeconds(1));
            await Task.WhenAny(work, Task.Delay(TimeSpan.FromMilliseconds(20), TestContext.Current.CancellationToken));
        }

        return await work;
    }
}

using System.Diagnostics;
using System.Globalization;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using NightWatch.Delivery.Mail;
using NightWatch.Delivery.Outbox;
using NightWatch.Service.Hosting;
using NightWatch.Service.Rehearsal;
using NightWatch.Service.Settings;
using NodaTime;

namespace NightWatch.Bench.Load;

/// <summary>The letters that a pass left in the queue, handed to a mail server on this machine by one process: how many a minute.</summary>
internal static class LoadLetters
{
    public static async Task<int> RunAsync(string setting, string port)
    {
        var clock = new VirtualClock(LoadWatches.At(19, 20));
        var settings = AllSettings.ForRehearsal(setting, Path.GetTempPath(), seed: 1) with
        {
            Mail = new MailOptions
            {
                Transport = "smtp",
                Host = "127.0.0.1",
                Port = int.Parse(port, CultureInfo.InvariantCulture),
                Security = "none",
                From = "NightWatch <watch@example.org>",
            },
        };
        await using var parts = new ServiceCollection()
            .AddLogging(logging => logging.ClearProviders())
            .AddSingleton<IClock>(clock).AddSingleton(TimeProvider.System)
            .AddNightWatch(settings)
            .BuildServiceProvider();
        var cpu = Process.GetCurrentProcess().TotalProcessorTime;
        var since = Stopwatch.GetTimestamp();
        var round = await parts.GetRequiredService<OutboxSender>().SendDueAsync(CancellationToken.None);
        var wall = Stopwatch.GetElapsedTime(since);
        Console.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"{round.Sent:N0} letters sent, {round.Retried + round.Dead + round.Postponed} not, in {wall.TotalSeconds:F1} s: " +
                $"{round.Sent / wall.TotalMinutes:N0} a minute; " +
                $"{(Process.GetCurrentProcess().TotalProcessorTime - cpu).TotalMilliseconds / Math.Max(1, round.Sent):F1} ms of " +
                $"processor time each"));
        return round.Sent > 0 ? 0 : 1;
    }
}

using System.Collections.Concurrent;
using System.Diagnostics;

namespace NightWatch.EndToEnd.Killing;

/// <summary>The real program in a process of its own.</summary>
internal sealed class ServiceProcess : IAsyncDisposable
{
    private readonly Process process;
    private readonly ConcurrentQueue<string> log = new();

    private ServiceProcess(Process process)
    {
        this.process = process;
        process.OutputDataReceived += (_, line) => log.Enqueue(line.Data ?? "");
        process.ErrorDataReceived += (_, line) => log.Enqueue(line.Data ?? "");
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
    }

    public string Log => string.Join('\n', log);

    public int Id => process.Id;

    public bool IsAlive => !process.HasExited;

    /// <summary>It has said that it is ready.</summary>
    public bool IsReady => log.Any(line => line.Contains("NightWatch[1] Ready", StringComparison.Ordinal));

    /// <summary>The program under test: this build's, or the published one that NW_PROGRAM names (nightwatch.dll).</summary>
    private static string Program =>
        Environment.GetEnvironmentVariable("NW_PROGRAM") ?? Path.Combine(AppContext.BaseDirectory, "nightwatch.dll");

    /// <summary>Programs that live for seconds are not measured by the runtime, as the tests themselves are not.</summary>
    public const string Unmeasured = "DOTNET_TieredPGO";

    /// <summary>Runs "nightwatch run" in a folder with the settings given.</summary>
    public static ServiceProcess Run(string folder, IEnumerable<KeyValuePair<string, string>> settings)
    {
        var start = new ProcessStartInfo(
            Environment.ProcessPath is { } host && Path.GetFileNameWithoutExtension(host) == "dotnet" ? host : "dotnet")
        {
            WorkingDirectory = folder,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.ArgumentList.Add(Program);
        start.ArgumentList.Add("run");
        start.Environment[Unmeasured] = "0";
        foreach (var (key, value) in settings) start.Environment["NIGHTWATCH__" + key.Replace(":", "__", StringComparison.Ordinal)] = value;
        return new(Process.Start(start)!);
    }

    /// <summary>kill -9.</summary>
    public void Kill() => process.Kill();

    public Task EndedAsync() => process.WaitForExitAsync(TestContext.Current.CancellationToken);

    /// <summary>SIGSTOP: asleep with everything in hand.</summary>
    public Task FreezeAsync() => SignalAsync("STOP");

    /// <summary>SIGCONT.</summary>
    public Task WakeAsync() => SignalAsync("CONT");

    /// <summary>SIGTERM, as a service manager stops it.</summary>
    /// <returns>The exit code.</returns>
    public async Task<int> StopAsync()
    {
        await SignalAsync("TERM");
        await EndedAsync();
        return process.ExitCode;
    }

    private async Task SignalAsync(string signal)
    {
        using var kill = Process.Start("kill", ["-" + signal, process.Id.ToString(System.Globalization.CultureInfo.InvariantCulture)]);
        await kill.WaitForExitAsync(TestContext.Current.CancellationToken);
    }

    public async ValueTask DisposeAsync()
    {
        if (!process.HasExited) process.Kill();
        await process.WaitForExitAsync(CancellationToken.None);
        process.Dispose();
    }
}

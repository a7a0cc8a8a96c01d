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

    /// <summary>Runs "nightwatch run" in a folder with the settings given.</summary>
    public static ServiceProcess Run(string folder, IEnumerable<KeyValuePair<string, string>> settings)
    {
        var start = new ProcessStartInfo(Environment.ProcessPath is { } host && Path.GetFileNameWithoutExtension(host) == "dotnet" ? host : "dotnet")
        {
            WorkingDirectory = folder,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.ArgumentList.Add(Path.Combine(AppContext.BaseDirectory, "nightwatch.dll"));
        start.ArgumentList.Add("run");
        foreach (var (key, value) in settings) start.Environment["NIGHTWATCH__" + key.Replace(":", "__", StringComparison.Ordinal)] = value;
        return new(Process.Start(start)!);
    }

    /// <summary>kill -9.</summary>
    public void Kill() => process.Kill();

    public Task EndedAsync() => process.WaitForExitAsync(TestContext.Current.CancellationToken);

    /// <summary>SIGTERM, as a service manager stops it.</summary>
    /// <returns>The exit code.</returns>
    public async Task<int> StopAsync()
    {
        using var term = Process.Start("kill", ["-TERM", process.Id.ToString(System.Globalization.CultureInfo.InvariantCulture)]);
        await EndedAsync();
        return process.ExitCode;
    }

    public async ValueTask DisposeAsync()
    {
        if (!process.HasExited) process.Kill();
        await process.WaitForExitAsync(CancellationToken.None);
        process.Dispose();
    }
}

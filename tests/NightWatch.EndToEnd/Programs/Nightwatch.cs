using System.Diagnostics;
using System.Text;
using NightWatch.EndToEnd.Killing;

namespace NightWatch.EndToEnd.Programs;

/// <summary>What a run of the program left.</summary>
internal sealed record Ran(int Exit, string Output, string Error)
{
    /// <summary>The one line that bad input gives.</summary>
    public string Line => Assert.Single(Error.Split('\n', StringSplitOptions.RemoveEmptyEntries));
}

/// <summary>The real program as a process of its own, in a folder of its own.</summary>
internal sealed class Nightwatch : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(10);

    /// <summary>Where it is called from.</summary>
    public string Folder { get; } = Directory.CreateTempSubdirectory("nightwatch-end-to-end-").FullName;

    public void Dispose() => Directory.Delete(Folder, recursive: true);

    /// <summary>A file in its folder.</summary>
    public string Write(string name, string text)
    {
        File.WriteAllText(Path.Combine(Folder, name), text);
        return name;
    }

    /// <summary>Runs one command to its end.</summary>
    public async Task<Ran> RunAsync(params string[] args)
    {
        using var process = Start(args);
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
        patience.CancelAfter(Patience);
        var output = process.StandardOutput.ReadToEndAsync(patience.Token);
        var error = process.StandardError.ReadToEndAsync(patience.Token);
        try
        {
            await process.WaitForExitAsync(patience.Token);
        }
        catch (OperationCanceledException)
        {
            process.Kill(entireProcessTree: true);
            throw;
        }

        return new Ran(process.ExitCode, await output, await error);
    }

    /// <summary>Starts one command and leaves it running.</summary>
    public Process Start(params string[] args)
    {
        var start = new ProcessStartInfo("dotnet", [Path.Combine(AppContext.BaseDirectory, "nightwatch.dll"), .. args])
        {
            WorkingDirectory = Folder,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            StandardOutputEncoding = Encoding.UTF8,
            StandardErrorEncoding = Encoding.UTF8,
        };
        start.Environment[ServiceProcess.Unmeasured] = "0";
        return Process.Start(start)!;
    }
}

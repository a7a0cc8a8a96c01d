using System.Diagnostics;

namespace NightWatch.EndToEnd.Faults;

/// <summary>A file system of a few megabytes in memory; the test is skipped where nobody may mount one.</summary>
internal sealed class SmallDisk : IAsyncDisposable
{
    private SmallDisk(string folder) => Folder = folder;

    public string Folder { get; }

    private string Ballast => Path.Combine(Folder, "ballast");

    public static async Task<SmallDisk> MountAsync(int megabytes)
    {
        var folder = Directory.CreateTempSubdirectory("nightwatch-small-").FullName;
        var mounted = await RunAsync("mount", "-t", "tmpfs", "-o", $"size={megabytes}m", "tmpfs", folder);
        if (!mounted) Directory.Delete(folder);
        Assert.SkipUnless(mounted, "A small file system could not be mounted; root may do that.");
        return new SmallDisk(folder);
    }

    /// <summary>Takes every last byte.</summary>
    public void Fill()
    {
        using var ballast = new FileStream(Ballast, FileMode.Create, FileAccess.Write, FileShare.None, 1);
        try
        {
            var some = new byte[64 * 1024];
            while (true) ballast.Write(some);
        }
        catch (IOException)
        {
            // Full.
        }
    }

    /// <summary>Gives it back.</summary>
    public void Free() => File.Delete(Ballast);

    public async ValueTask DisposeAsync()
    {
        await RunAsync("umount", "-l", Folder);
        Directory.Delete(Folder, recursive: true);
    }

    private static async Task<bool> RunAsync(string program, params string[] args)
    {
        try
        {
            using var process = Process.Start(new ProcessStartInfo(program, args) { RedirectStandardError = true })!;
            await process.WaitForExitAsync(CancellationToken.None);
            return process.ExitCode == 0;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return false;
        }
    }
}

namespace NightWatch.Store.Connections;

/// <summary>Files for their owner only, whatever the umask and at any moment: they are full of addresses.</summary>
internal static class PrivateFile
{
    /// <summary>Opens a file; one that is made is its owner's alone.</summary>
    public static FileStream Open(string path, FileMode mode, FileAccess access, FileShare share = FileShare.Read)
    {
        var options = new FileStreamOptions
        {
            Mode = mode,
            Access = access,
            Share = share,
            BufferSize = 1,
        };
        if (!OperatingSystem.IsWindows() && mode is not FileMode.Open)
            options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        return new FileStream(path, options);
    }

    /// <summary>Makes an empty one unless there is one. What SQLite puts beside it gets its mode.</summary>
    public static void Ensure(string path)
    {
        if (File.Exists(path)) return;
        try
        {
            Open(path, FileMode.CreateNew, FileAccess.Write).Dispose();
        }
        catch (IOException) when (File.Exists(path))
        {
            // Another first start was faster.
        }
    }
}

namespace NightWatch.Store.Connections;

/// <summary>A lock file that the operating system lets go of when the process ends, however it ends.</summary>
internal sealed class ProcessLock : IDisposable
{
    private readonly FileStream file;

    private ProcessLock(FileStream file) => this.file = file;

    public bool Held { get; private set; } = true;

    /// <returns>Null: another holds it.</returns>
    public static ProcessLock? TryTake(string path)
    {
        try
        {
            return new(PrivateFile.Open(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None));
        }
        catch (IOException fault) when (fault.GetType() == typeof(IOException) && File.Exists(path))
        {
            return null;
        }
    }

    public void Dispose()
    {
        Held = false;
        file.Dispose();
    }
}

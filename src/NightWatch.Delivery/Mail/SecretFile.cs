namespace NightWatch.Delivery.Mail;

/// <summary>A secret that stands alone in a file: never on a command line, never in the settings, never in a log.</summary>
internal static class SecretFile
{
    /// <summary>The secret, without the line end that editors add.</summary>
    public static string Read(string path) => File.ReadAllText(path).TrimEnd('\r', '\n');

    /// <returns>One sentence that names the key; null: it can be read and holds something.</returns>
    public static string? Fault(string path, string key)
    {
        try
        {
            return Read(path).Length > 0 ? null : $"{key}: {path} is empty.";
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            return $"{key}: {path} cannot be read ({Why(fault)}).";
        }
    }

    /// <returns>Advice for the operator when others on the machine may read the file; null: all well, or not known here.</returns>
    public static string? Advice(string path, string key) =>
        !OperatingSystem.IsWindows()
        && File.Exists(path)
        && (File.GetUnixFileMode(path) & (UnixFileMode.OtherRead | UnixFileMode.OtherWrite)) != 0
            ? $"{key}: {path} is open to every user of this machine; chmod 600 closes it."
            : null;

    private static string Why(Exception fault) => fault switch
    {
        FileNotFoundException or DirectoryNotFoundException => "no such file",
        UnauthorizedAccessException => "permission denied",
        _ => fault.Message,
    };
}

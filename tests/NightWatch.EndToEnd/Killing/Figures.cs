namespace NightWatch.EndToEnd.Killing;

/// <summary>What a long test measured, for whoever asked for it: appended to the file that NW_FIGURES names.</summary>
internal static class Figures
{
    public static async Task WriteAsync(string line)
    {
        if (Environment.GetEnvironmentVariable("NW_FIGURES") is { Length: > 0 } file)
            await File.AppendAllTextAsync(file, line.TrimEnd() + "\n", TestContext.Current.CancellationToken);
    }
}

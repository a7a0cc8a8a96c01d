namespace NightWatch.Planning.Watches.Reading;

/// <summary>One thing that is wrong with a file.</summary>
/// <param name="Path">The file.</param>
/// <param name="Line">From 1.</param>
/// <param name="Field">The member's path, such as "site.position.latitudeDeg"; empty for the file as a whole.</param>
/// <param name="Message">What is wrong and what is accepted.</param>
public sealed record FileFault(string Path, int Line, string Field, string Message)
{
    /// <inheritdoc/>
    public override string ToString() => Field.Length == 0 ? $"{Path} line {Line}: {Message}" : $"{Path} line {Line}, {Field}: {Message}";
}

/// <summary>What came of reading a file: the value, or every fault it has.</summary>
/// <param name="Value">Null exactly when there are faults.</param>
/// <param name="Faults">In the order of the lines.</param>
public sealed record FileReading<T>(T? Value, IReadOnlyList<FileFault> Faults)
    where T : class;

/// <summary>Files that hold one watch, its site inside.</summary>
public static class WatchFile
{
    /// <summary>A whole watch with a comment at every field, ready to be edited.</summary>
    public static string Example { get; } = ReadExample();

    /// <summary>Reads a watch; every fault is collected, none is thrown.</summary>
    /// <param name="text">The file's text: JSON, comments and trailing commas allowed.</param>
    /// <param name="path">How the faults name the file.</param>
    public static FileReading<Watch> Read(string text, string path) => new CheckedFile(path, prefix: "").Read<Watch>(text, CrossChecks.Of);

    private static string ReadExample()
    {
        using var stream = typeof(WatchFile).Assembly.GetManifestResourceStream("watch.json")!;
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}

/// <summary>Files that hold one site.</summary>
public static class SiteFile
{
    /// <summary>Reads a site; every fault is collected, none is thrown.</summary>
    /// <param name="text">The file's text: JSON, comments and trailing commas allowed.</param>
    /// <param name="path">How the faults name the file.</param>
    public static FileReading<Site> Read(string text, string path) => new CheckedFile(path, prefix: "site").Read<Site>(text, _ => []);
}

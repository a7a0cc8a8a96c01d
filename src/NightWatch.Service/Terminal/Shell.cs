using NightWatch.Sky.Places;
using NodaTime;
using Spectre.Console;

namespace NightWatch.Service.Terminal;

/// <summary>What a command may touch of the world around it.</summary>
/// <param name="Output">Standard output: the answer, nothing else.</param>
/// <param name="Error">Standard error: faults, progress, logs.</param>
/// <param name="Clock">The clock.</param>
/// <param name="Directory">Where relative paths start and appsettings.json is looked for.</param>
internal sealed record Shell(Stream Output, TextWriter Error, IClock Clock, string Directory)
{
    /// <summary>A relative path from where the command was called.</summary>
    public string PathOf(string path) => Path.GetFullPath(path, Directory);

    /// <summary>One line of answer.</summary>
    public void Say(string line)
    {
        Output.Write(System.Text.Encoding.UTF8.GetBytes(line + "\n"));
        Output.Flush();
    }

    /// <summary>Draws tables on standard output.</summary>
    public void Draw(Action<IAnsiConsole> draw)
    {
        using var writer = new StreamWriter(Output, leaveOpen: true);
        var console = AnsiConsole.Create(new AnsiConsoleSettings { Out = new AnsiConsoleOutput(writer) });
        // A pipe has no width; tables are cut to the terminal only where there is one.
        if (Console.IsOutputRedirected) console.Profile.Width = 160;
        draw(console);
    }

    /// <summary>The skyline in a file that the user named; null for none.</summary>
    /// <exception cref="BadInputException">It cannot be read, or a line is no point of a skyline.</exception>
    public HorizonProfile? ReadHorizon(string? path)
    {
        if (path is null) return null;
        using var text = new StreamReader(new MemoryStream(ReadFile(path, "--horizon")));
        try
        {
            return HorizonCsv.Read(text);
        }
        catch (FormatException fault)
        {
            throw new BadInputException($"--horizon: {fault.Message}");
        }
    }

    /// <summary>Writes a file that the user named.</summary>
    /// <exception cref="BadInputException">It cannot be written; the message names the option.</exception>
    public void WriteFile(string path, string option, byte[] bytes)
    {
        try
        {
            File.WriteAllBytes(PathOf(path), bytes);
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException or ArgumentException)
        {
            throw new BadInputException($"{option}: cannot write '{path}': {failure.Message}");
        }
    }

    /// <summary>Reads a file that the user named.</summary>
    /// <exception cref="BadInputException">It cannot be read; the message names the option.</exception>
    public byte[] ReadFile(string path, string option)
    {
        try
        {
            return File.ReadAllBytes(PathOf(path));
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException or ArgumentException)
        {
            throw new BadInputException($"{option}: cannot read '{path}': {failure.Message}");
        }
    }
}

/// <summary>What the user gave cannot be used. The message is one sentence that names the field and says what is accepted.</summary>
internal sealed class BadInputException(string message) : Exception(message);

/// <summary>The answers of a command to its caller.</summary>
internal static class Exit
{
    public const int Ok = 0;
    public const int Failure = 1;
    public const int BadInput = 2;
}

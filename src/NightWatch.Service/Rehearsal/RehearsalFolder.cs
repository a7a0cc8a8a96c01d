using System.Text;
using NightWatch.Service.Terminal;
using NightWatch.Store.Outbox;

namespace NightWatch.Service.Rehearsal;

/// <summary>Where a rehearsal's letters and index go.</summary>
internal sealed class RehearsalFolder
{
    private const string IndexName = "index.html";

    private RehearsalFolder(string folder)
    {
        Index = Path.Combine(folder, IndexName);
        Letters = Path.Combine(folder, "letters");
    }

    /// <summary>The index page.</summary>
    public string Index { get; }

    /// <summary>The letters.</summary>
    public string Letters { get; }

    /// <summary>Makes an empty folder, or clears one that an earlier rehearsal made.</summary>
    /// <exception cref="BadInputException">It holds something else.</exception>
    public static RehearsalFolder Prepare(string folder)
    {
        var prepared = new RehearsalFolder(folder);
        try
        {
            Directory.CreateDirectory(folder);
            var entries = Directory.EnumerateFileSystemEntries(folder).Select(Path.GetFileName).ToList();
            if (entries.Count > 0 && !(entries.Contains(IndexName) && entries.All(entry => entry is IndexName or "letters")))
                throw new BadInputException(
                    $"--out: '{folder}' holds other files; accepted: a new or empty folder, or one of an earlier rehearsal.");
            if (Directory.Exists(prepared.Letters)) Directory.Delete(prepared.Letters, recursive: true);
            Directory.CreateDirectory(prepared.Letters);
            // From the start, so that a rehearsal that was stopped half-way can be done again in the same place.
            File.WriteAllText(prepared.Index, "");
            return prepared;
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            throw new BadInputException($"--out: '{folder}' cannot be written: {failure.Message}");
        }
    }

    /// <summary>Writes the letters as pages beside their .eml files, and the index.</summary>
    public void Write(RehearsalStory story)
    {
        foreach (var letter in story.Letters)
        {
            if (story.Outbox.GetValueOrDefault(letter.MessageId) is { State: OutboxState.Sent } entry)
                File.WriteAllText(
                    Path.Combine(Path.GetDirectoryName(Index)!, RehearsalPage.FileOf(entry) + ".html"),
                    letter.Letter.Html,
                    new UTF8Encoding(false));
        }

        File.WriteAllText(Index, RehearsalPage.Of(story), new UTF8Encoding(false));
    }
}

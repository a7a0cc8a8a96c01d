using System.Runtime.CompilerServices;
using System.Text;

namespace NightWatch.Service.Tests.Documents;

/// <summary>A file of the repository that is made from the code, held against what the code would make now.</summary>
internal static class WrittenFile
{
    private const int Columns = 160;

    /// <summary>Fails where they differ, and leaves the new text beside the test.</summary>
    /// <param name="path">From the root of the repository.</param>
    /// <param name="text">What it should hold.</param>
    public static void Same(string path, string text)
    {
        var made = Path.Combine(AppContext.BaseDirectory, "Actual", Path.GetFileName(path));
        Directory.CreateDirectory(Path.GetDirectoryName(made)!);
        File.WriteAllText(made, text);
        var kept = FromRoot(path);
        Assert.True(
            File.Exists(kept) && File.ReadAllText(kept) == text,
            $"{path} is not what the code says. If the code is right, copy {made} over it.");
    }

    /// <summary>One item of a list, its lines broken.</summary>
    public static string Item(string text)
    {
        var lines = new StringBuilder("-");
        var at = 1;
        foreach (var word in text.Split(' '))
        {
            if (at + 1 + word.Length > Columns)
            {
                lines.Append("\n ");
                at = 1;
            }

            lines.Append(' ').Append(word);
            at += 1 + word.Length;
        }

        return lines.Append('\n').ToString();
    }

    /// <summary>A path in the repository.</summary>
    public static string FromRoot(string path) => Path.GetFullPath(Path.Combine(Path.GetDirectoryName(Here())!, "../../..", path));

    private static string Here([CallerFilePath] string here = "") => here;
}

using System.Text.RegularExpressions;
using MimeKit;
using NightWatch.Letters.Tests.Plans;

namespace NightWatch.Letters.Tests;

/// <summary>
/// Every letter as it was last read and accepted by a person. To accept a change, read the file the failure names and copy it over
/// the one in Golden.
/// </summary>
public sealed partial class GoldenLetterTests
{
    public static TheoryData<string> Names => [.. TestDrafts.All.Select(d => d.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public async Task A_letter_reads_as_accepted(string name)
    {
        using var writer = new LetterWriter(TestDrafts.Head);
        var letter = await writer.WriteAsync(TestDrafts.All.Single(d => d.Name == name).Draft, TestContext.Current.CancellationToken);
        Same(name, letter.Message, letter.Text);
    }

    public static TheoryData<string> Notices => [.. TestNotices.All.Select(d => d.Name)];

    [Theory]
    [MemberData(nameof(Notices))]
    public async Task A_notice_reads_as_accepted(string name)
    {
        using var writer = new LetterWriter(TestDrafts.Head);
        var notice = await TestNotices.All.Single(d => d.Name == name).Write(writer);
        Same(name, notice.Message, notice.Text);
    }

    private static void Same(string name, MimeMessage message, string text)
    {
        string?[] differences =
        [
            Difference($"{name}.txt", $"Subject: {message.Subject}\n\n{text}"),
            Difference($"{name}.html", OneElementALine(message.HtmlBody!)),
        ];
        Assert.True(differences.All(d => d is null), string.Join('\n', differences));
    }

    private static string? Difference(string file, string actual)
    {
        var accepted = Path.Combine(AppContext.BaseDirectory, "Golden", file);
        var text = File.Exists(accepted) ? File.ReadAllText(accepted).ReplaceLineEndings("\n") : "";
        if (text == actual) return null;
        var written = Path.Combine(Directory.CreateDirectory(Path.Combine(AppContext.BaseDirectory, "Actual")).FullName, file);
        File.WriteAllText(written, actual);
        return $"Golden/{file} differs. If the new letter is right, copy {written} over it.\n{FirstDifference(text, actual)}";
    }

    private static string FirstDifference(string accepted, string actual)
    {
        var (then, now) = (accepted.Split('\n'), actual.Split('\n'));
        var line = Enumerable
            .Range(0, Math.Max(then.Length, now.Length))
            .First(i => then.ElementAtOrDefault(i) != now.ElementAtOrDefault(i));
        return $"Line {line + 1}:\n- {then.ElementAtOrDefault(line)}\n+ {now.ElementAtOrDefault(line)}";
    }

    // Inlined styles follow from the classes and would bury the words in a diff.
    private static string OneElementALine(string html)
    {
        var bare = StyleAttribute().Replace(DarkBlock().Replace(html.ReplaceLineEndings("\n"), ""), "");
        return string.Join('\n', BlockStart().Replace(bare, "\n$0").Split('\n').Select(l => l.Trim()).Where(l => l.Length > 0)) + "\n";
    }

    [GeneratedRegex(" style=\"[^\"]*\"")]
    private static partial Regex StyleAttribute();

    [GeneratedRegex("<style id=\"dark\">.*?</style>", RegexOptions.Singleline)]
    private static partial Regex DarkBlock();

    [GeneratedRegex("<(?!/|strong|em|br|span|a )")]
    private static partial Regex BlockStart();
}

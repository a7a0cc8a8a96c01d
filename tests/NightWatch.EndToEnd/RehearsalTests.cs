using System.Text.RegularExpressions;
using MimeKit;
using NightWatch.EndToEnd.Programs;

namespace NightWatch.EndToEnd;

public sealed partial class RehearsalTests
{
    /// <summary>
    /// The newcomer's first command shows one of everything; if it does not, the default seed in RehearseCommand wants choosing anew.
    /// </summary>
    [Fact]
    public async Task The_first_command_shows_one_of_everything()
    {
        using var program = new Nightwatch();

        var ran = await program.RunAsync("rehearse", "--out", "out");

        Assert.True(ran.Exit == 0, ran.Error);
        Assert.Contains("day ", ran.Error, StringComparison.Ordinal);
        Assert.Matches("Its alternative, .* was on", ran.Output);
        Assert.Contains("Quiet around full Moon: no letter from", ran.Output, StringComparison.Ordinal);
        Assert.Contains("came no-go", ran.Output, StringComparison.Ordinal);
        var letters = Directory.GetFiles(Path.Combine(program.Folder, "out", "letters"), "*.eml").Order().ToList();
        var subjects = letters.Select(file => MimeMessage.Load(file).Subject ?? "").ToList();
        Assert.Contains(subjects, subject => subject.StartsWith("OFF tonight", StringComparison.Ordinal));
        Assert.Contains(subjects, subject => subject.StartsWith("GO tonight", StringComparison.Ordinal));
        Assert.Contains(subjects, subject => subject.StartsWith("STAND DOWN", StringComparison.Ordinal));
        Assert.All(letters, letter => Assert.True(File.Exists(Path.ChangeExtension(letter, ".html"))));

        var index = await File.ReadAllTextAsync(Path.Combine(program.Folder, "out", "index.html"), TestContext.Current.CancellationToken);
        foreach (var kind in (string[])["outlook", "morning timeline", "reschedule warning", "stand down", "debrief"])
            Assert.Contains($"<i>{kind}</i>", index, StringComparison.Ordinal);
        Assert.All(
            Links().Matches(index),
            link => Assert.True(File.Exists(Path.Combine(program.Folder, "out", link.Groups[1].Value)), link.Value));
        Assert.DoesNotContain("http", index, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Two_rehearsals_give_the_same_bytes()
    {
        using var program = new Nightwatch();

        await program.RunAsync("rehearse", "--days", "6", "--seed", "3", "--out", "one");
        await program.RunAsync("rehearse", "--days", "6", "--seed", "3", "--out", "two");

        var one = Directory.GetFiles(Path.Combine(program.Folder, "one"), "*", SearchOption.AllDirectories).Order().ToList();
        Assert.True(one.Count > 5);
        Assert.All(
            one,
            file => Assert.Equal(File.ReadAllBytes(file), File.ReadAllBytes(file.Replace("/one/", "/two/", StringComparison.Ordinal))));
    }

    [Fact]
    public async Task A_folder_that_holds_something_else_is_left_alone()
    {
        using var program = new Nightwatch();
        Directory.CreateDirectory(Path.Combine(program.Folder, "mine"));
        program.Write("mine/photo.raw", "light");

        var ran = await program.RunAsync("rehearse", "--out", "mine");

        Assert.Equal(2, ran.Exit);
        Assert.Contains("--out", ran.Line, StringComparison.Ordinal);
        Assert.True(File.Exists(Path.Combine(program.Folder, "mine/photo.raw")));
    }

    [GeneratedRegex("href=\"([^\"#]+)\"")]
    private static partial Regex Links();
}

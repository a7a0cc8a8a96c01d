using System.Text;
using NightWatch.Service.Commands;
using NightWatch.Service.Terminal;
using NodaTime;
using NodaTime.Testing;

namespace NightWatch.Service.Tests.Commands;

/// <summary>What each command says of itself.</summary>
public sealed class HelpTests
{
    /// <summary>A command refuses to take an option for granted that its help does not mark: here with nothing given at all.</summary>
    [Theory]
    [InlineData("sky", "--lat")]
    [InlineData("plan", "--watch")]
    [InlineData("season", "--lat")]
    [InlineData("verify-archive", "--runs")]
    [InlineData("outcome add", "--watch")]
    [InlineData("replay", "--from")]
    [InlineData("letter", "--kind")]
    public async Task What_is_required_is_marked_and_named_when_it_is_missing(string command, string first)
    {
        var (exit, _, error) = await RunAsync(command);
        var (_, help, _) = await RunAsync(command + " --help");

        Assert.Equal(2, exit);
        Assert.StartsWith($"nightwatch: {first} is missing", error, StringComparison.Ordinal);
        Assert.DoesNotContain("(required)", error, StringComparison.Ordinal);
        Assert.Contains(
            help.Split('\n'),
            line => line.TrimStart().StartsWith(first, StringComparison.Ordinal) && line.Contains("(required)", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Ranges_and_choices_stand_beside_the_option()
    {
        var help = (await RunAsync("plan --help")).Output;

        Assert.Contains("--feed <met-norway|open-meteo|nws|fake>", help, StringComparison.Ordinal);
        Assert.Contains("--rain-before <0 to 2000>", help, StringComparison.Ordinal);
        Assert.Contains("--night <date>", help, StringComparison.Ordinal);
    }

    private static async Task<(int Exit, string Output, string Error)> RunAsync(string line)
    {
        using var output = new MemoryStream();
        await using var error = new StringWriter();
        var shell = new Shell(output, error, new FakeClock(Instant.FromUtc(2027, 3, 4, 12, 0)), Path.GetTempPath());
        var exit = await CommandLine.RunAsync(line.Split(' '), shell);
        return (exit, Encoding.UTF8.GetString(output.ToArray()), error.ToString());
    }
}

using System.Text;
using System.Text.Json;
using NightWatch.Service.Commands.SkyNights;
using NightWatch.Service.Terminal;

namespace NightWatch.Service.Tests.Commands.SkyNights;

public sealed class SkyBatchTests
{
    private const string Good = """{"lat":-24.7,"lon":15.3,"elevation":570,"zone":"Africa/Windhoek","night":"2026-08-12"}""";

    [Fact]
    public async Task Answers_come_in_the_order_of_the_lines_however_long_the_file()
    {
        var lines = Enumerable
            .Range(0, 4000)
            .Select(i => $$"""{"lat":{{i % 60}},"lon":{{i % 180}},"zone":"UTC","night":"2026-{{1 + (i % 12):00}}-{{1 + (i % 28):00}}"}""")
            .ToList();

        var (exit, answers) = await RunAsync(string.Join('\n', lines) + "\n");

        Assert.Equal(Exit.Ok, exit);
        Assert.Equal(
            lines.Select(line => JsonDocument.Parse(line).RootElement.GetProperty("night").GetString()),
            answers.Select(answer => answer.GetProperty("night").GetString()));
    }

    [Theory]
    [InlineData("""{"lat":95,"lon":1,"zone":"UTC","night":"2026-01-01"}""", "lat 95")]
    [InlineData("""{"lon":1,"zone":"UTC","night":"2026-01-01"}""", "lat is missing")]
    [InlineData("""{"lat":1,"lon":1,"zone":"Mars/X","night":"2026-01-01"}""", "zone")]
    [InlineData("""{"lat":1,"lon":1,"zone":"UTC","night":"2026-02-30"}""", "night")]
    [InlineData("""{"lat":1,"lon":1,"zone":"UTC","night":"2026-01-01","subject":"comet"}""", "subject")]
    [InlineData("""{"lat":1,"lon":1,"zone":"UTC","night":"2026-01-01","colour":1}""", "colour")]
    [InlineData("""{"lat":1,"lon":1,"zone":"UTC","night":"2026-01-01","ra":10}""", "dec is missing")]
    [InlineData("""{"lat":"1","lon":1,"zone":"UTC","night":"2026-01-01"}""", "lat")]
    [InlineData("{", "JSON")]
    [InlineData("[]", "JSON object")]
    [InlineData("", "JSON")]
    public async Task A_bad_line_gives_an_error_in_its_place_and_exit_code_2(string bad, string named)
    {
        var (exit, answers) = await RunAsync($"{Good}\n{bad}\n{Good}");

        Assert.Equal(Exit.BadInput, exit);
        Assert.Equal(3, answers.Count);
        Assert.Contains(named, answers[1].GetProperty("error").GetString(), StringComparison.Ordinal);
        Assert.Equal(2, answers[1].GetProperty("line").GetInt32());
        Assert.Equal("2026-08-12", answers[2].GetProperty("night").GetString());
    }

    [Fact]
    public async Task An_empty_file_gives_nothing_and_is_no_fault()
    {
        var (exit, answers) = await RunAsync("");

        Assert.Equal(Exit.Ok, exit);
        Assert.Empty(answers);
    }

    [Fact]
    public async Task A_line_longer_than_a_block_is_read_whole()
    {
        var padded = Good.Replace("\"lat\"", new string(' ', 500_000) + "\"lat\"", StringComparison.Ordinal);

        var (exit, answers) = await RunAsync($"{padded}\n{Good}\n");

        Assert.Equal((Exit.Ok, 2), (exit, answers.Count));
    }

    private static async Task<(int Exit, List<JsonElement> Answers)> RunAsync(string input)
    {
        var output = new MemoryStream();
        var exit = await SkyBatch.RunAsync(new MemoryStream(Encoding.UTF8.GetBytes(input)), output, TestContext.Current.CancellationToken);
        var lines = Encoding.UTF8.GetString(output.ToArray()).Split('\n', StringSplitOptions.RemoveEmptyEntries);
        return (exit, [.. lines.Select(line => JsonDocument.Parse(line).RootElement)]);
    }
}

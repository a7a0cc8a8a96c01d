using System.Text;
using System.Text.Json;
using NightWatch.Service.Commands;
using NightWatch.Service.Terminal;
using NodaTime;
using NodaTime.Testing;

namespace NightWatch.Service.Tests.Commands;

public sealed class VerifySimulatedCommandTests
{
    private const string Small = "verify-simulated --years 1 --sites 1 --every 30 --seed 3";

    [Fact]
    public async Task The_document_has_leads_letters_and_naive_rules()
    {
        var (exit, output, _) = await RunAsync(Small + " --json");
        Assert.Equal(0, exit);
        using var document = JsonDocument.Parse(output);
        var root = document.RootElement;
        Assert.Equal(3, root.GetProperty("seed").GetInt32());
        Assert.Equal([0, 1, 2, 3], root.GetProperty("leads").EnumerateArray().Select(lead => lead.GetProperty("leadNights").GetInt32()));
        Assert.Equal(4, root.GetProperty("naive").GetArrayLength());
        Assert.Equal(root.GetProperty("nights").GetInt32(), root.GetProperty("letters").GetProperty("calls").GetProperty("count").GetInt32());
    }

    [Theory]
    [InlineData("--years 0", "--years")]
    [InlineData("--sites many", "--sites")]
    [InlineData("--every 31", "--every")]
    public async Task A_bad_number_is_refused_in_one_line(string given, string field)
    {
        var (exit, output, error) = await RunAsync("verify-simulated " + given);
        Assert.Equal((2, ""), (exit, output));
        Assert.StartsWith($"nightwatch: {field}: ", error, StringComparison.Ordinal);
        Assert.Equal(1, error.Count(letter => letter == '\n'));
    }

    private static async Task<(int Exit, string Output, string Error)> RunAsync(string command)
    {
        using var output = new MemoryStream();
        using var error = new StringWriter { NewLine = "\n" };
        var exit = await CommandLine.RunAsync(command.Split(' '), new Shell(output, error, new FakeClock(Instant.FromUtc(2027, 1, 1, 0, 0)), Path.GetTempPath()));
        return (exit, Encoding.UTF8.GetString(output.ToArray()), error.ToString());
    }
}

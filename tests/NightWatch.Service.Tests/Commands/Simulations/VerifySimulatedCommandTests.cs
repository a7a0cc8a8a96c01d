using System.Text;
using System.Text.Json;
using NightWatch.Service.Commands;
using NightWatch.Service.Terminal;
using NodaTime;
using NodaTime.Testing;

namespace NightWatch.Service.Tests.Commands.Simulations;

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
        Assert.Equal("humid-continental", root.GetProperty("climate").GetString());
        var said = root.GetProperty("leads")[0].GetProperty("said");
        Assert.Equal(root.GetProperty("nights").GetInt32(), said.GetProperty("n").GetInt32());
        Assert.Equal(
            [1.25, 2, 3, 5, 10], said.GetProperty("expense").EnumerateArray().Select(row => row.GetProperty("lossPerDrive").GetDouble()));
    }

    [Theory]
    [InlineData("--years 0", "--years")]
    [InlineData("--sites many", "--sites")]
    [InlineData("--every 31", "--every")]
    [InlineData("--members -1", "--members")]
    [InlineData("--climate wet", "--climate")]
    public async Task A_bad_value_is_refused_in_one_line(string given, string field)
    {
        var (exit, output, error) = await RunAsync("verify-simulated " + given);
        Assert.Equal((2, ""), (exit, output));
        Assert.StartsWith($"nightwatch: {field}: ", error, StringComparison.Ordinal);
        Assert.Equal(1, error.Count(letter => letter == '\n'));
    }

    [Theory]
    [InlineData("verify-simulated")]
    [InlineData("rehearse")]
    public async Task Help_lists_the_kinds_of_climate_and_a_bad_one_is_told_them(string command)
    {
        const string Kinds = "dry-desert, semi-arid-high-plain, humid-continental, marine-coast";
        Assert.Contains(Kinds, Given.Climate().Description, StringComparison.Ordinal);
        Assert.Equal((2, "", $"nightwatch: --climate: wet is not known; accepted: {Kinds}.\n"), await RunAsync(command + " --climate wet"));
    }

    private static async Task<(int Exit, string Output, string Error)> RunAsync(string command)
    {
        using var output = new MemoryStream();
        using var error = new StringWriter { NewLine = "\n" };
        var exit = await CommandLine.RunAsync(
            command.Split(' '), new Shell(output, error, new FakeClock(Instant.FromUtc(2027, 1, 1, 0, 0)), Path.GetTempPath()));
        return (exit, Encoding.UTF8.GetString(output.ToArray()), error.ToString());
    }
}

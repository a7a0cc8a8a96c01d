using NightWatch.Service.Commands;
using NightWatch.Service.Terminal;
using NodaTime;

namespace NightWatch.Service.Tests.Commands;

public sealed class CommandLineTests : IDisposable
{
    private const string Plan = "plan --watch w.json --night 2027-03-04 --forecast f.json --feed fake";

    private readonly string folder = Directory.CreateTempSubdirectory("nightwatch-line-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Theory]
    [InlineData("replay")]
    [InlineData("scores --watch moor")]
    [InlineData("verdicts --watch moor --json")]
    [InlineData("outcome list --watch moor")]
    public async Task A_range_of_nights_that_ends_before_it_begins_is_refused_by_the_name_of_its_option(string command)
    {
        var (exit, error) = await RunAsync(command + " --from 2027-03-02 --to 2027-03-01");

        Assert.Equal(
            (2, "nightwatch: --to: 2027-03-01 is before --from, 2027-03-02; accepted: the same night or a later one.\n"), (exit, error));
    }

    [Theory]
    [InlineData("sky --lat 1 --lon 1 --zone UTC --night 2150-01-01", "--night: 2150-01-01")]
    [InlineData("season --lat 1 --lon 1 --zone UTC --from 2100-12-01 --nights 40", "--nights: 40 from 2100-12-01")]
    public async Task A_night_that_the_sky_is_not_computed_for_is_bad_input(string command, string named)
    {
        var (exit, error) = await RunAsync(command);

        Assert.Equal(2, exit);
        Assert.Contains(named, error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_exception_of_ours_is_no_bad_input_however_it_is_called()
    {
        var (exit, error) = await RunAsync(Plan, new BrokenClock());

        Assert.Equal(1, exit);
        Assert.Equal("nightwatch: The clock went backwards. (Parameter 'now')\n", error);
    }

    [Fact]
    public async Task At_debug_level_its_trace_is_told_too()
    {
        await File.WriteAllTextAsync(
            Path.Combine(folder, "appsettings.json"),
            """{"Logging":{"LogLevel":{"Default":"Debug"}}}""",
            TestContext.Current.CancellationToken);

        var (exit, error) = await RunAsync(Plan, new BrokenClock());

        Assert.Equal(1, exit);
        Assert.Contains(nameof(BrokenClock), error, StringComparison.Ordinal);
        Assert.EndsWith("nightwatch: The clock went backwards. (Parameter 'now')\n", error, StringComparison.Ordinal);
    }

    private async Task<(int Exit, string Error)> RunAsync(string command, IClock? clock = null)
    {
        using var error = new StringWriter { NewLine = "\n" };
        var exit = await CommandLine.RunAsync(command.Split(' '), new Shell(Stream.Null, error, clock ?? new BrokenClock(), folder));
        return (exit, error.ToString());
    }

    private sealed class BrokenClock : IClock
    {
        public Instant GetCurrentInstant() => throw new ArgumentOutOfRangeException("now", "The clock went backwards.");
    }
}

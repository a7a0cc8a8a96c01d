using System.Text;
using System.Text.Json;
using NightWatch.Service.Commands;
using NightWatch.Service.Terminal;
using NodaTime;
using NodaTime.Testing;

namespace NightWatch.Service.Tests.Commands.Seasons;

public sealed class SeasonCommandTests : IDisposable
{
    private const string Ridge =
        "season --lat 36.01 --lon -117.2 --elevation 1200 --zone America/Los_Angeles --from 2026-02-10 --nights 40";

    private readonly string folder = Directory.CreateTempSubdirectory("season").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public async Task The_document_has_every_night_its_rank_and_the_lunations()
    {
        var (exit, output, _) = await RunAsync(Ridge + " --json");
        Assert.Equal(0, exit);
        using var document = JsonDocument.Parse(output);
        var root = document.RootElement;
        Assert.Equal("America/Los_Angeles", root.GetProperty("zone").GetString());
        Assert.Equal(40, root.GetProperty("nights").GetArrayLength());
        var ranked = root.GetProperty("ranked").EnumerateArray().Select(night => night.GetString()).ToList();
        var first = root.GetProperty("nights").EnumerateArray().Single(night => night.GetProperty("night").GetString() == ranked[0]);
        Assert.Equal(1, first.GetProperty("rank").GetInt32());
        Assert.Equal(ranked.Count, root.GetProperty("nights").EnumerateArray().Count(night => night.GetProperty("usable").GetBoolean()));
        Assert.All(
            root.GetProperty("nights").EnumerateArray(),
            night => Assert.Equal(night.GetProperty("usableMinutes").GetDouble() >= 90, night.GetProperty("usable").GetBoolean()));
        Assert.InRange(
            ranked.Count,
            1,
            root.GetProperty("nights").EnumerateArray().Count(night => night.GetProperty("shootingHours").GetDouble() > 0));
        var best = root.GetProperty("lunations").EnumerateArray().Select(lunation => lunation.GetProperty("best")).ToList();
        // In February the core is up too briefly.
        Assert.Equal([JsonValueKind.Null, JsonValueKind.Object], best.Select(run => run.ValueKind));
        Assert.Equal(ranked.Count, best[1].GetProperty("nights").GetInt32());
        var eclipse = root.GetProperty("nights")
            .EnumerateArray()
            .Single(night => night.GetProperty("eclipse").ValueKind == JsonValueKind.Object);
        Assert.Equal("2026-03-02", eclipse.GetProperty("night").GetString());
        Assert.Equal("total", eclipse.GetProperty("eclipse").GetProperty("kind").GetString());
        Assert.Equal(1, eclipse.GetProperty("eclipse").GetProperty("darkTotality").GetArrayLength());
    }

    [Fact]
    public async Task The_table_shows_the_nights_and_the_best_run_of_each_lunation()
    {
        var (exit, output, _) = await RunAsync(Ridge);
        Assert.Equal(0, exit);
        Assert.Contains("Tue 10 Feb 2026", output);
        Assert.Contains("no. 1", output);
        Assert.Contains("New Moon Tue 17 Feb 04:01 PST: no usable night.", output);
        Assert.Contains("New Moon Wed 18 Mar 18:23 PDT: best from Fri 13 Mar 2026", output);
        Assert.Contains("total eclipse of the Moon", output);
    }

    [Theory]
    [InlineData("season --lat 69 --lon 18 --zone Europe/Oslo --from 2026-06-20 --nights 3 --subject stars", "The Sun does not set.")]
    [InlineData("season --lat 69 --lon 18 --zone Europe/Oslo --from 2026-12-08 --nights 3", "The subject does not rise.")]
    [InlineData("sky --lat 69 --lon 18 --zone Europe/Oslo --night 2026-06-20 --subject stars", "The Sun does not set.")]
    [InlineData("sky --lat 69 --lon 18 --zone Europe/Oslo --night 2026-12-08", "The subject does not rise.")]
    public async Task A_night_without_a_window_says_why_and_in_the_same_words_as_the_single_night(string command, string words)
    {
        var (exit, output, _) = await RunAsync(command);
        Assert.Equal(0, exit);
        Assert.Contains(words, output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Picture_and_calendar_are_written_where_they_are_asked_for()
    {
        var (exit, _, _) = await RunAsync(Ridge + " --place Ravens --png s.png --svg s.svg --ics s.ics");
        Assert.Equal(0, exit);
        Assert.Equal(
            "PNG"u8.ToArray(), (await File.ReadAllBytesAsync(Path.Combine(folder, "s.png"), TestContext.Current.CancellationToken))[1..4]);
        Assert.StartsWith(
            "<svg",
            await File.ReadAllTextAsync(Path.Combine(folder, "s.svg"), TestContext.Current.CancellationToken),
            StringComparison.Ordinal);
        var ics = await File.ReadAllTextAsync(Path.Combine(folder, "s.ics"), TestContext.Current.CancellationToken);
        Assert.Contains("METHOD:PUBLISH", ics);
        Assert.Contains("DTSTAMP:20260201T000000Z", ics);
    }

    [Fact]
    public async Task A_skyline_file_shortens_the_subject_windows()
    {
        await File.WriteAllTextAsync(Path.Combine(folder, "ridge.csv"), "azimuth,altitude\n0,25\n", TestContext.Current.CancellationToken);
        Assert.True(await UsableHoursAsync(" --horizon ridge.csv") < await UsableHoursAsync("") - 1);
    }

    [Theory]
    [InlineData("--subject=M999", "--subject: M999 is not known; accepted: galactic-core, stars,")]
    [InlineData("--subject=galactic-band", "subject galactic-band has no galactic longitude;")]
    [InlineData("--nights=0", "--nights: 0 is out of range; accepted: a whole number from 1 to 3660.")]
    [InlineData("--horizon=none.csv", "--horizon: cannot read 'none.csv'")]
    [InlineData("--ics=no/such/folder/s.ics", "--ics: cannot write 'no/such/folder/s.ics'")]
    [InlineData("--ra=10", "--dec is missing; accepted: --ra and --dec together")]
    public async Task Bad_input_is_refused_in_one_line_that_names_the_field(string option, string message)
    {
        var (exit, _, error) = await RunAsync(
            Ridge.Replace(option.StartsWith("--nights", StringComparison.Ordinal) ? " --nights 40" : "\n", "", StringComparison.Ordinal)
                + " "
                + option);
        Assert.Equal(2, exit);
        Assert.Contains(message, error);
        Assert.Single(error.TrimEnd().Split('\n'));
    }

    private async Task<double> UsableHoursAsync(string options)
    {
        var (_, output, _) = await RunAsync(Ridge + " --json" + options);
        using var document = JsonDocument.Parse(output);
        return document.RootElement.GetProperty("nights").EnumerateArray().Sum(night => night.GetProperty("shootingHours").GetDouble());
    }

    private async Task<(int Exit, string Output, string Error)> RunAsync(string line)
    {
        using var output = new MemoryStream();
        await using var error = new StringWriter();
        var exit = await CommandLine.RunAsync(
            line.Split(' '), new Shell(output, error, new FakeClock(Instant.FromUtc(2026, 2, 1, 0, 0)), folder));
        return (exit, Encoding.UTF8.GetString(output.ToArray()), error.ToString());
    }
}

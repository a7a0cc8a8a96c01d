using System.Text;
using System.Text.Json;
using NightWatch.Planning.Watches.Reading;
using NightWatch.Service.Commands;
using NightWatch.Service.Terminal;
using NodaTime;
using NodaTime.Testing;

namespace NightWatch.Watchkeeping.Tests.Archives;

public sealed class VerifyArchiveCommandTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("nightwatch-archive-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public async Task The_document_has_the_fields_of_the_contract_and_its_scores_follow_from_its_nights()
    {
        var (exit, output, _) = await RunAsync("verify-archive", "--runs", October.RunsFile,
            "--outcome", October.OutcomeFile, "--json");
        Assert.Equal(0, exit);
        using var document = JsonDocument.Parse(output);
        var root = document.RootElement;
        Assert.Equal(["nights", "byLead", "letters"], Names(root));
        var looks = root.GetProperty("nights").EnumerateArray().ToList();
        Assert.Equal(31 * 4, looks.Count);
        Assert.All(looks,
            look => Assert.Equal(
                ["night", "lead", "look", "verdict", "probability", "basis", "usableMinutes", "usable", "scored"], Names(look)));
        Assert.Equal(("2024-10-01", "2024-10-01T19:00:00.000Z"),
            (looks[0].GetProperty("night").GetString(), looks[0].GetProperty("look").GetString()));
        Assert.All(looks, look => Assert.Contains(look.GetProperty("verdict").GetString(), (string[])["go", "marginal", "noGo"]));
        Assert.Contains(looks, look => look.GetProperty("basis").GetString() == "laggedRuns");
        Assert.Equal(["sent", "flips", "toldOnFailedUnwarned", "usableNeverTold"], Names(root.GetProperty("letters")));
        Assert.All(root.GetProperty("letters").EnumerateObject(), figure => Assert.True(figure.Value.GetInt32() >= 0));
        var leads = root.GetProperty("byLead").EnumerateArray().ToList();
        Assert.Equal([0, 1, 2, 3], leads.Select(lead => lead.GetProperty("lead").GetInt32()));
        Assert.All(leads, lead => Follows(lead, looks));
    }

    private static void Follows(JsonElement lead, List<JsonElement> looks)
    {
        Assert.Equal(["lead", "n", "usableShare", "brier", "climate", "skill", "reliability", "expense"], Names(lead));
        var scored = looks.Where(look => look.GetProperty("scored").GetBoolean()
            && look.GetProperty("lead").GetInt32() == lead.GetProperty("lead").GetInt32())
            .Select(look => (
                P: look.GetProperty("probability").GetDouble(), Usable: look.GetProperty("usable").GetBoolean()))
            .ToList();
        Assert.InRange(scored.Count, 15, 31);
        Assert.Equal(scored.Count, lead.GetProperty("n").GetInt32());
        var share = scored.Average(night => night.Usable ? 1.0 : 0);
        Assert.Equal(share, lead.GetProperty("usableShare").GetDouble(), 6);
        Assert.Equal(scored.Average(night => Math.Pow(night.P - (night.Usable ? 1 : 0), 2)), lead.GetProperty("brier").GetDouble(), 6);
        Assert.Equal(share * (1 - share), lead.GetProperty("climate").GetDouble(), 6);
        Assert.Equal(1 - lead.GetProperty("brier").GetDouble() / lead.GetProperty("climate").GetDouble(),
            lead.GetProperty("skill").GetDouble(), 6);
        var cells = lead.GetProperty("reliability").EnumerateArray().ToList();
        Assert.Equal((10, scored.Count), (cells.Count, cells.Sum(cell => cell.GetProperty("n").GetInt32())));
        Assert.All(cells, cell => Assert.Equal(["said", "came", "n"], Names(cell)));
        var rows = lead.GetProperty("expense").EnumerateArray().ToList();
        Assert.Equal([1.25, 2, 3, 5, 10], rows.Select(row => row.GetProperty("lossPerDrive").GetDouble()));
        foreach (var row in rows)
        {
            Assert.Equal(["lossPerDrive", "calls", "always", "never", "darkCloud", "fixedLimits"], Names(row));
            var loss = row.GetProperty("lossPerDrive").GetDouble();
            // No hazard stood over a night of that month, so this reader goes wherever the chance pays.
            var (nothing, missed) = (scored.Count(night => night.P >= 1 / (loss + 1) && !night.Usable),
                scored.Count(night => night.P < 1 / (loss + 1) && night.Usable));
            Assert.Equal(100 * (nothing + loss * missed) / scored.Count, row.GetProperty("calls").GetDouble(), 6);
            Assert.Equal(100 * (1 - share), row.GetProperty("always").GetDouble(), 6);
            Assert.Equal(100 * loss * share, row.GetProperty("never").GetDouble(), 6);
            Assert.Equal([0.3, 0.4, 0.5, 0.6],
                row.GetProperty("darkCloud").EnumerateArray().Select(rule => rule.GetProperty("limit").GetDouble()));
        }
    }

    [Fact]
    public async Task A_watch_and_an_hour_of_ones_own_are_taken_and_the_table_names_the_source()
    {
        await File.WriteAllTextAsync(Path.Combine(folder, "watch.json"), WatchFile.Example, TestContext.Current.CancellationToken);
        var (exit, output, error) = await RunAsync(
            "verify-archive", "--runs", October.RunsFile, "--outcome", October.OutcomeFile, "--watch", "watch.json", "--look", "08:30");
        Assert.Equal(0, exit);
        Assert.Contains("CC BY 4.0", output, StringComparison.Ordinal);
        Assert.Contains("Expense a hundred nights", output, StringComparison.Ordinal);
        Assert.Contains("warning: --runs is for New York", error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Without_a_prior_the_chances_are_even_until_the_nights_that_are_over_taught_something()
    {
        var none = await ChancesAsync("--prior", "none");
        Assert.All(none, chance => Assert.Equal(0.5, chance, 12));
        var learnt = await ChancesAsync("--prior", "none", "--learn", "on");
        // The first look at the first night knows no night yet.
        Assert.Equal(0.5, learnt[0], 12);
        Assert.InRange(learnt.Max() - learnt.Min(), 0.3, 1);
        Assert.NotEqual(none, await ChancesAsync("--prior", "shipped"));

        async Task<List<double>> ChancesAsync(params string[] options)
        {
            var (exit, output, _) = await RunAsync(
                ["verify-archive", "--runs", October.RunsFile, "--outcome", October.OutcomeFile, "--json", .. options]);
            Assert.Equal(0, exit);
            using var document = JsonDocument.Parse(output);
            return [.. document.RootElement.GetProperty("nights").EnumerateArray()
                .Where(look => look.GetProperty("scored").GetBoolean()).Select(look => look.GetProperty("probability").GetDouble())];
        }
    }

    [Fact]
    public async Task Bad_input_is_refused_in_one_line()
    {
        await File.WriteAllTextAsync(Path.Combine(folder, "bad.jsonl"),
            "{\"archive\":1,\"kind\":\"runs\"}\n", TestContext.Current.CancellationToken);
        await RefusedAsync("nightwatch: --runs is missing", "--outcome", October.OutcomeFile);
        await RefusedAsync("nightwatch: --look: 25:00 is not a time of day; accepted: HH:MM",
            "--runs", October.RunsFile, "--outcome", October.OutcomeFile, "--look", "25:00");
        await RefusedAsync("nightwatch: --prior: mine is not known; accepted: shipped, none, blocks",
            "--runs", October.RunsFile, "--outcome", October.OutcomeFile, "--prior", "mine");
        await RefusedAsync("nightwatch: --learn: yes is not known; accepted: on, off",
            "--runs", October.RunsFile, "--outcome", October.OutcomeFile, "--learn", "yes");
        await RefusedAsync("nightwatch: --prior: blocks leaves nothing to fit on, the archive is too short; accepted: shipped, none",
            "--runs", October.RunsFile, "--outcome", October.OutcomeFile, "--prior", "blocks");
        await RefusedAsync("nightwatch: --runs: 'bad.jsonl' line 1, place: it is missing",
            "--runs", "bad.jsonl", "--outcome", October.OutcomeFile);
        await RefusedAsync("line 1, kind: runs is not what is wanted here; accepted: outcome.",
            "--runs", October.RunsFile, "--outcome", October.RunsFile);
        await RefusedAsync("nightwatch: --runs: cannot read 'none'", "--runs", "none", "--outcome", October.OutcomeFile);
    }

    private async Task RefusedAsync(string sentence, params string[] args)
    {
        var (exit, output, error) = await RunAsync(["verify-archive", .. args]);
        Assert.Equal((2, ""), (exit, output));
        Assert.Contains(sentence, error, StringComparison.Ordinal);
        Assert.Equal(1, error.Count(letter => letter == '\n'));
    }

    private async Task<(int Exit, string Output, string Error)> RunAsync(params string[] args)
    {
        using var output = new MemoryStream();
        using var error = new StringWriter { NewLine = "\n" };
        var exit = await CommandLine.RunAsync(args, new Shell(output, error, new FakeClock(Instant.FromUtc(2027, 1, 1, 0, 0)), folder));
        return (exit, Encoding.UTF8.GetString(output.ToArray()), error.ToString());
    }

    private static IEnumerable<string> Names(JsonElement element) => element.EnumerateObject().Select(member => member.Name);
}

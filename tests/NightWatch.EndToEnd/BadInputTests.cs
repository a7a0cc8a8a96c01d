using NightWatch.EndToEnd.Programs;
using NightWatch.Planning.Watches.Reading;

namespace NightWatch.EndToEnd;

public sealed class BadInputTests
{
    private const string Sky = "sky --lat -24.7 --lon 15.3 --zone Africa/Windhoek --night 2026-08-12";

    [Theory]
    [InlineData("sky --lat 95 --lon 15.3 --zone Africa/Windhoek --night 2026-08-12", "--lat")]
    [InlineData("sky --lat -24.7 --lon 200 --zone Africa/Windhoek --night 2026-08-12", "--lon")]
    [InlineData("sky --lat -24.7 --lon 15.3 --zone Mars/Olympus --night 2026-08-12", "--zone")]
    [InlineData("sky --lat -24.7 --lon 15.3 --zone Africa/Windhoek --night 2026-02-30", "--night")]
    [InlineData("sky --lat -24.7 --lon 15.3 --zone Africa/Windhoek --night tomorrow", "--night")]
    [InlineData("sky --lon 15.3 --zone Africa/Windhoek --night 2026-08-12", "--lat")]
    [InlineData(Sky + " --ra 10", "dec")]
    [InlineData(Sky + " --ra 10 --dec 10 --subject galactic-core", "subject")]
    [InlineData(Sky + " --subject comet", "--subject: comet")]
    [InlineData(Sky + " --min-altitude 100", "--min-altitude")]
    [InlineData(Sky + " --elevation 99999", "--elevation")]
    [InlineData(Sky + " --colour red", "--colour")]
    [InlineData("sky --batch nowhere.jsonl --json", "--batch")]
    [InlineData("season --lat 1 --lon 1 --zone UTC --from 2026-01-01 --nights 0", "--nights")]
    [InlineData("rehearse --days 0", "--days")]
    [InlineData("plan --watch none.json --night 2026-08-12 --forecast f.json --feed met-norway", "--watch")]
    [InlineData("plan --watch good.json --night 2026-08-12 --forecast none.json --feed met-norway", "--forecast")]
    [InlineData("plan --watch good.json --night 2026-08-12 --forecast good.json --feed met-norway", "--forecast")]
    [InlineData("plan --watch good.json --night 2026-08-12 --forecast good.json --feed pigeon", "--feed")]
    [InlineData("plan --watch good.json --night 2026-08-12 --forecast good.json --feed met-norway --now today", "--now")]
    [InlineData("watch add bad.json", ", site.zone: \"Mars/Olympus\" is not accepted")]
    [InlineData("watch show nobody", "nobody")]
    [InlineData("site remove nowhere", "nowhere")]
    [InlineData("run --config nowhere.json", "--config")]
    [InlineData("dance", "dance")]
    public async Task Bad_input_gives_one_line_that_names_the_field_and_exit_code_2(string command, string named)
    {
        using var program = new Nightwatch();
        program.Write("good.json", WatchFile.Example);
        program.Write("bad.json", WatchFile.Example.Replace("\"Africa/Windhoek\"", "\"Mars/Olympus\"", StringComparison.Ordinal));
        var ran = await program.RunAsync(command.Split(' '));

        Assert.Equal(2, ran.Exit);
        Assert.Contains(named, ran.Line, StringComparison.Ordinal);
        Assert.Empty(ran.Output);
    }
}

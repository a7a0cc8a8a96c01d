using System.IO.Compression;
using System.Text;
using NightWatch.Weather.Archives;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Weather.Tests.Archives;

public sealed class ForecastArchiveTests
{
    private const string Place = """ "place":"A ridge","latitudeDeg":40.71,"longitudeDeg":-73.99,"elevationM":7,""" +
        """ "zone":"America/New_York","feed":"open-meteo","source":"Somebody, CC BY 4.0" """;
    private const string RunsHeader = """{"archive":1,"kind":"runs",""" + Place + "}";
    private const string OutcomeHeader = """{"archive":1,"kind":"outcome",""" + Place + "}";

    private const string Run =
        """{"issued":"2024-05-03T19:00Z","start":"2024-05-03T18:00Z","stepMinutes":60,"cloudPercent":[-1,101,40,null],""" +
        """ "airC":[9,8,7,6],"dewPointC":[5,5,5,5],"rainProbabilityPercent":[0,30,0,null],""" +
        """ "rainMm":[0,1.5,0,0],"windMps":[2,3,4,5],"gustMps":[6,7,8,9]}""";

    private static readonly Instant start = Instant.FromUtc(2024, 5, 3, 18, 0);
    private static readonly Duration hour = Duration.FromHours(1);
    private static readonly Duration far = Duration.FromDays(6);

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Instants_belong_to_their_time_and_rain_to_the_hour_that_ends_there(bool zipped)
    {
        var archive = ForecastArchive.ReadRuns(Bytes(zipped, RunsHeader, Run), far);
        Assert.Equal(new ArchiveHeader("A ridge", 40.71, -73.99, 7, "America/New_York", "open-meteo", "Somebody, CC BY 4.0"),
            archive.Header);
        var run = Assert.Single(archive.Runs);
        Assert.Equal((Instant.FromUtc(2024, 5, 3, 19, 0), "open-meteo"), (run.IssuedAt!.Value, run.FeedId));
        Assert.Equal(run.IssuedAt, run.RetrievedAt);
        Assert.Equal(8, run.At(InstantQuantity.AirTemperatureC, start + hour).Value);
        Assert.Equal(4, run.At(InstantQuantity.WindMps, start + 2 * hour).Value);
        Assert.Equal(1.5, run.Over(PeriodQuantity.PrecipitationMm, new Interval(start, start + hour)).Value);
        Assert.Equal(0, run.Over(PeriodQuantity.PrecipitationMm, new Interval(start + hour, start + 2 * hour)).Value);
        Assert.Equal(0.3, run.Over(PeriodQuantity.PrecipitationProbability, new Interval(start, start + hour)).Value!.Value, 12);
        Assert.Equal(7, run.Over(PeriodQuantity.GustMps, new Interval(start, start + hour)).Value);
    }

    [Fact]
    public void Cloud_just_off_its_scale_is_clipped_and_null_is_unknown()
    {
        var run = ForecastArchive.ReadRuns(Bytes(false, RunsHeader, Run), far).Runs[0];
        Assert.Equal([0, 1, 0.4, null],
            Enumerable.Range(0, 4).Select(i => run.At(InstantQuantity.CloudAreaFraction, start + hour * i).Value));
        Assert.Null(run.Over(PeriodQuantity.PrecipitationProbability, new Interval(start + 2 * hour, start + 3 * hour)).Value);
        var absurd = ForecastArchive.ReadRuns(Bytes(false, RunsHeader, Run.Replace("101", "-999", StringComparison.Ordinal)), far).Runs[0];
        Assert.Equal([start, start + 2 * hour], absurd.Instants[InstantQuantity.CloudAreaFraction].Select(point => point.At));
    }

    [Fact]
    public void Runs_are_ordered_by_issue_and_the_first_of_two_stands()
    {
        var earlier = Run.Replace("\"issued\":\"2024-05-03T19", "\"issued\":\"2024-05-03T12", StringComparison.Ordinal);
        var doubled = Run.Replace("\"airC\":[9", "\"airC\":[1", StringComparison.Ordinal);
        var runs = ForecastArchive.ReadRuns(Bytes(true, RunsHeader, Run, "", earlier, doubled), far).Runs;
        Assert.Equal([12, 19], runs.Select(run => run.IssuedAt!.Value.InUtc().Hour));
        Assert.Equal(9, runs[1].At(InstantQuantity.AirTemperatureC, start).Value);
    }

    [Fact]
    public void Hours_beyond_the_wanted_ones_are_left_out()
    {
        var run = ForecastArchive.ReadRuns(Bytes(false, RunsHeader, Run), hour).Runs[0];
        Assert.Equal(3, run.Instants[InstantQuantity.AirTemperatureC].Length);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Hours_that_came_make_one_series(bool zipped)
    {
        var hours = ForecastArchive.ReadOutcome(Bytes(
            zipped,
            OutcomeHeader,
            """{"at":"2024-05-03T18:00Z","cloudPercent":101,"rainMm":0.4,"airC":15.8,"dewPointC":14.0,"gustMps":5.3,"by":"laterRun"}""",
            """{"at":"2024-05-03T19:00Z","cloudPercent":null,"rainMm":null,"airC":null,"dewPointC":null,"by":"aerodrome"}""")).Hours;
        Assert.Equal(1, hours.At(InstantQuantity.CloudAreaFraction, start).Value);
        Assert.Null(hours.At(InstantQuantity.CloudAreaFraction, start + hour).Value);
        Assert.Equal(0.4, hours.Over(PeriodQuantity.PrecipitationMm, new Interval(start - hour, start)).Value);
        Assert.Null(hours.Over(PeriodQuantity.GustMps, new Interval(start, start + hour)).Value);
        Assert.Null(hours.IssuedAt);
    }

    [Theory]
    [InlineData("stepMinutes\":60", "stepMinutes\":0", "line 2, stepMinutes: accepted: a number from 1 to 1440.")]
    [InlineData("2024-05-03T19:00Z", "yesterday", "line 2, issued: yesterday is no time; accepted: UTC such as 2024-05-03T19:00Z.")]
    [InlineData("\"airC\":[9,8,7,6]", "\"airC\":[9,8,7]", "line 2, airC: it has 3 values; accepted: as many as cloudPercent, 4.")]
    [InlineData("\"airC\":[9,", "\"airC\":[\"warm\",", "line 2, airC: value 1 is no number; accepted: numbers, null where unknown.")]
    [InlineData("\"cloudPercent\"", "\"cloud\"", "line 2, cloudPercent: it is missing; accepted: an array of numbers, null where unknown.")]
    [InlineData("\"start\"", "\"begins\"", "line 2, start: it is missing; accepted: a text.")]
    [InlineData("\"gustMps\":[6,7,8,9]}", "\"gustMps\":[6,7", "line 2: this is no JSON; accepted: one object a line.")]
    public void A_bad_run_is_refused_in_one_sentence_with_line_and_field(string good, string bad, string sentence)
    {
        var broken = Run.Replace(good, bad, StringComparison.Ordinal);
        Assert.Equal(sentence,
            Assert.Throws<ArchiveFormatException>(() => ForecastArchive.ReadRuns(Bytes(false, RunsHeader, broken), far)).Message);
    }

    [Theory]
    [InlineData("\"archive\":1", "\"archive\":2", "line 1, archive: 2 is not known; accepted: 1.")]
    [InlineData("\"runs\"", "\"outcome\"", "line 1, kind: outcome is not what is wanted here; accepted: runs.")]
    [InlineData("40.71", "91", "line 1, latitudeDeg: accepted: a number from -90 to 90.")]
    [InlineData("\"zone\"", "\"where\"", "line 1, zone: it is missing; accepted: a text.")]
    public void A_bad_header_is_refused_in_one_sentence(string good, string bad, string sentence)
    {
        var broken = RunsHeader.Replace(good, bad, StringComparison.Ordinal);
        Assert.Equal(sentence,
            Assert.Throws<ArchiveFormatException>(() => ForecastArchive.ReadRuns(Bytes(false, broken, Run), far)).Message);
    }

    [Theory]
    [InlineData("""{"at":"2024-05-03T18:00Z","cloudPercent":"half","by":"laterRun"}""",
        "line 2, cloudPercent: accepted: a number, or null for unknown.")]
    [InlineData("""{"at":"2024-05-03T18:00Z","cloudPercent":50,"by":"rumour"}""",
        "line 2, by: rumour is not known; accepted: laterRun, aerodrome.")]
    [InlineData("[1,2]", "line 2: this is no object; accepted: one object a line.")]
    public void A_bad_hour_is_refused_in_one_sentence(string line, string sentence) =>
        Assert.Equal(sentence,
            Assert.Throws<ArchiveFormatException>(() => ForecastArchive.ReadOutcome(Bytes(false, OutcomeHeader, line))).Message);

    [Fact]
    public void An_empty_archive_says_what_it_lacks()
    {
        Assert.Equal("line 1: the file is empty; accepted: a header line first.",
            Assert.Throws<ArchiveFormatException>(() => ForecastArchive.ReadRuns([], far)).Message);
        Assert.Equal(
            "line 2: the archive holds no hour; accepted: one a line below the header.",
            Assert.Throws<ArchiveFormatException>(() => ForecastArchive.ReadOutcome(Bytes(true, OutcomeHeader))).Message);
    }

    [Fact]
    public void A_damaged_gzip_file_is_refused()
    {
        var damaged = Bytes(true, [RunsHeader, .. Enumerable.Repeat(Run, 50)]);
        damaged.AsSpan(damaged.Length / 2).Fill(0xff);
        Assert.StartsWith("line ",
            Assert.Throws<ArchiveFormatException>(() => ForecastArchive.ReadRuns(damaged, far)).Message, StringComparison.Ordinal);
    }

    private static byte[] Bytes(bool zipped, params string[] lines)
    {
        var plain = Encoding.UTF8.GetBytes(string.Join('\n', lines));
        if (!zipped) return plain;
        using var file = new MemoryStream();
        using (var zip = new GZipStream(file, CompressionLevel.Fastest)) zip.Write(plain);
        return file.ToArray();
    }
}

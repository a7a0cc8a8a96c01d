using System.Collections.Immutable;
using System.Text;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.OpenMeteo;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Weather.Tests.OpenMeteo;

public sealed class OpenMeteoEnsembleReaderTests
{
    private static readonly Instant First = Instant.FromUnixTimeSeconds(1930114800);

    private static ImmutableArray<ForecastSeries> Read(string hourly, string units = "") =>
        new OpenMeteoEnsembleReader().ReadMembers(
            Encoding.UTF8.GetBytes(
                $$"""
                {"latitude":46.0,"longitude":7.5,"elevation":1650.0,"hourly_units":{"time":"unixtime","cloud_cover":"%",
                  "precipitation":"mm"{{units}} },
                 "hourly":{"time":[1930114800,1930118400],{{hourly}} } }
                """
            ),
            First);

    [Fact]
    public void The_bare_column_is_the_control_and_the_others_are_numbered_members()
    {
        var members = Read("""
            "cloud_cover":[5,10],"cloud_cover_member02":[96,100],"cloud_cover_member01":[0,3],
            "precipitation":[0,0],"precipitation_member01":[0.1,0.2],"precipitation_member02":[null,null]
            """);

        Assert.Equal([0, 1, 2], members.Select(m => m.Member!.Value));
        Assert.Equal(
            [0.1, 0.03, 1.0],
            members.Select(m => Math.Round(m.At(InstantQuantity.CloudAreaFraction, First + Duration.FromHours(1)).Value!.Value, 9)));
        var hour = new Interval(First, First + Duration.FromHours(1));
        Assert.Equal([0.0, 0.2, null], members.Select(m => m.Over(PeriodQuantity.PrecipitationMm, hour).Value));
    }

    [Fact]
    public void A_member_without_cloud_is_not_counted() =>
        Assert.Equal(
            [0, 2],
            Read("\"cloud_cover\":[5,10],\"cloud_cover_member01\":[null,null],\"cloud_cover_member02\":[96,100]")
                .Select(m => m.Member!.Value));

    [Fact]
    public void Members_keep_their_own_nulls()
    {
        var members = Read("\"cloud_cover\":[5,null],\"cloud_cover_member01\":[null,3]");

        Assert.Equal(Reading.Unknown, members[0].At(InstantQuantity.CloudAreaFraction, First + Duration.FromHours(1)));
        Assert.Equal(Reading.Unknown, members[1].At(InstantQuantity.CloudAreaFraction, First));
    }

    [Theory]
    [InlineData(51)]
    [InlineData(21)]
    public void The_number_of_members_is_read_off_the_columns(int count)
    {
        var columns = Enumerable.Range(0, count).Select(i => i == 0 ? "\"cloud_cover\":[1,2]" : $"\"cloud_cover_member{i:00}\":[1,2]");

        Assert.Equal(count, Read(string.Join(',', columns)).Length);
    }

    [Fact]
    public void Columns_of_several_models_are_not_taken_for_members() =>
        Assert.Throws<ForecastFormatException>(() => Read("\"cloud_cover_member01_ncep_gefs_seamless\":[1,2]"));

    [Fact]
    public void An_ensemble_without_any_value_is_refused() =>
        Assert.Contains(
            "no member",
            Assert.Throws<ForecastFormatException>(() => Read("\"cloud_cover\":[null,null]")).Message,
            StringComparison.Ordinal);
}

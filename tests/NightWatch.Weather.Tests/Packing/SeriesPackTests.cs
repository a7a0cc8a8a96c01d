using System.Collections.Immutable;
using System.Text;
using CsCheck;
using NightWatch.Weather.Fake;
using NightWatch.Weather.Feeds;
using NightWatch.Weather.MetNorway;
using NightWatch.Weather.Nws;
using NightWatch.Weather.OpenMeteo;
using NightWatch.Weather.Packing;
using NightWatch.Weather.Series;
using NightWatch.Weather.Tests.OpenMeteo;
using NightWatch.Weather.Tests.Recordings;
using NodaTime;

namespace NightWatch.Weather.Tests.Packing;

public sealed class SeriesPackTests
{
    private static readonly Instant Retrieved = Instant.FromUtc(2027, 3, 4, 17, 42, 8);
    private static readonly Attribution Source = new("By nobody", new Uri("https://example.org/a"), "CC0");

    public static TheoryData<string> Answers => ["met-norway", "nws", "open-meteo", "open-meteo-ensemble", "fake", "fake members"];

    private static ImmutableArray<ForecastSeries> Answer(string name) =>
        name switch
        {
            "met-norway" => [new MetNorwayReader().Read(Recording.Bytes(Recording.MetNorway), Retrieved)],
            "nws" => [new NwsGridpointReader().Read(Recording.Bytes(Recording.NwsGridpoint), Retrieved)],
            "open-meteo" =>
            [
                new OpenMeteoReader().Read(
                    Hourly("\"cloud_cover\":[12,null,100],\"temperature_2m\":[-0.0,2.6,null],\"visibility\":[24140.0,90.5,20]"), Retrieved),
            ],
            "open-meteo-ensemble" => new OpenMeteoEnsembleReader().ReadMembers(
                Hourly("\"cloud_cover\":[1,2,3],\"cloud_cover_member07\":[4,null,33.3]"), Retrieved),
            "fake" =>
            [
                new FakeReader().Read(
                    FakeBody.Write(new FakeWeather(3), new ForecastPlace(55, -4, 200), Instant.FromUtc(2027, 3, 4, 12, 0), null),
                    Retrieved),
            ],
            _ => new FakeReader().ReadMembers(
                FakeBody.Write(new FakeWeather(3), new ForecastPlace(55, -4, 200), Instant.FromUtc(2027, 3, 4, 12, 0), 5), Retrieved),
        };

    private static byte[] Hourly(string columns) => Encoding.UTF8.GetBytes(OpenMeteoReaderTests.Body(columns));

    [Theory, MemberData(nameof(Answers))]
    public void What_a_reader_read_comes_back_without_loss(string name)
    {
        var answer = Answer(name);

        var again = SeriesPack.Unpack(SeriesPack.Pack(answer), 7, Retrieved);

        Assert.Equal(answer.Length, again.Length);
        Assert.All(answer.Zip(again), pair => AssertSame(pair.First, pair.Second));
        Assert.All(again, series => Assert.Equal((7, Retrieved), (series.Id, series.RetrievedAt)));
    }

    [Fact]
    public void Whatever_the_values_are_they_come_back_bit_for_bit()
    {
        var value = Gen.OneOf(
            Gen.Double,
            Gen.Int[-400, 4000].Select(n => n / 10.0),
            Gen.Int[0, 1000].Select(n => n / 1000.0),
            Gen.Int[0, 500].Select(n => n / 3.6),
            Gen.Const(-0.0));
        var point = Gen.Select(
            Gen.Long[1, 36_000_000_000_000], value, Gen.Bool.Select(direct => direct ? Quality.Direct : Quality.Derived));
        Gen.Select(point.Array[1, 80], point.Array[0, 30], Gen.Int[-1, 60])
            .Sample(
                (instants, periods, member) =>
                {
                    var at = Instant.FromUtc(2027, 1, 1, 0, 0);
                    var points = instants.Select(p => new InstantPoint(at = at.PlusTicks(p.Item1), p.Item2, p.Item3)).ToImmutableArray();
                    var stretches = periods
                        .Select(p => (Start: at, End: at = at.PlusTicks(p.Item1), p.Item2, p.Item3))
                        .Select(p => new PeriodPoint(p.Start, p.End, p.Item3, p.Item4));
                    var series = new ForecastSeries
                    {
                        FeedId = "fake",
                        ModelId = "é 模",
                        Member = member < 0 ? null : member,
                        IssuedAt = member < 0 ? null : at.PlusTicks(member),
                        RetrievedAt = Retrieved,
                        Attribution = member % 2 == 0 ? Source : Source with { LicenceLink = new Uri("https://example.org/l") },
                        Cell = new ForecastCell(-46.123456789, 7.1, member < 0 ? null : -3.5),
                        Instants = ImmutableDictionary<InstantQuantity, ImmutableArray<InstantPoint>>.Empty.Add(
                            InstantQuantity.WindMps, points),
                        Periods = ImmutableDictionary<PeriodQuantity, ImmutableArray<PeriodPoint>>.Empty.Add(
                            PeriodQuantity.GustMps, [.. stretches]),
                    };

                    AssertSame(series, Assert.Single(SeriesPack.Unpack(SeriesPack.Pack([series]), null, Retrieved)));
                }, iter: 500);
    }

    [Theory, MemberData(nameof(Answers))]
    public void A_changed_or_missing_byte_is_refused(string name)
    {
        var packed = SeriesPack.Pack(Answer(name));
        Gen.Select(Gen.Int[0, packed.Length - 1], Gen.Int[1, 255], Gen.Bool)
            .Sample(
                (at, flip, cut) =>
                {
                    byte[] broken = cut ? packed[..at] : [.. packed[..at], (byte)(packed[at] ^ flip), .. packed[(at + 1)..]];
                    try
                    {
                        // The last byte of a compressed stream has bits that nobody reads; what does come through is what was packed.
                        return SeriesPack
                            .Unpack(broken, null, Retrieved)
                            .Zip(Answer(name))
                            .All(pair =>
                            {
                                AssertSame(pair.Second, pair.First);
                                return true;
                            });
                    }
                    catch (ForecastFormatException)
                    {
                        return true;
                    }
                },
                iter: 300);
    }

    [Fact]
    public void Contents_that_make_no_sense_are_refused_and_nothing_else()
    {
        var plain = new SeriesWriter().Write(Answer("nws"));
        Gen.Select(Gen.Int[0, plain.Length - 1], Gen.Byte, Gen.Bool).Array[1, 4].Sample(hits =>
        {
            byte[] broken = [.. plain];
            foreach (var (at, value, cut) in hits)
            {
                if (at >= broken.Length) continue;
                if (cut) broken = broken[..at];
                else broken[at] = value;
            }

            try
            {
                return new SeriesReader(broken).Read(null, Retrieved).Length > 0;
            }
            catch (ForecastFormatException)
            {
                return true;
            }
        }, iter: 2000);
    }

    [Fact]
    public void A_newer_version_says_so()
    {
        var packed = SeriesPack.Pack(Answer("met-norway"));
        packed[0] = 2;

        var refused = Assert.Throws<ForecastFormatException>(() => SeriesPack.Unpack(packed, null, Retrieved));

        Assert.Contains("version 2", refused.Message, StringComparison.Ordinal);
    }

    /// <summary>A pack as this version first wrote it: later programs must go on reading it.</summary>
    [Fact]
    public void A_pack_of_the_first_version_is_read_for_ever()
    {
        var series = Assert.Single(SeriesPack.Unpack(Convert.FromBase64String(FirstVersion), 3, Retrieved));

        AssertSame(Small(), series);
    }

    private const string FirstVersion =
        "AcoC5MeNbBNJAQDE5xmX/6x+oUANo9tWD8TrtwwjbZVpbmCU1p355SDwXX74dj20woBbDlHSVgss4vSGlsMrSQ5y4gEbTK81IvP5Q3FjkuJ1Jq"
        + "wWRkVS6vOb/JakxBGJBAaGW08lXxtJlZVKQaXHH7WUh6zGmtC7GaNea79jVFnjbX6nL1JJa3f6LM2BMK3KutKQLLy26+waafZBs5dILRTOOkeX"
        + "i2WUwvBYf5Fx+GdmcbUnEIgkMgUgxAoU7NWX9fbEzi7BOYK2jEQFjUoCEZkOGpWnx7OYBnRN+ADyHeiibdsz+oDBFOLA8Cbu8PL1DwJK0ZaVMc"
        + "Ak0siMLIXAAkE+7O3V9gI9PZoeq+7sn1xdw0tLAQ==";

    private static ForecastSeries Small()
    {
        var start = Instant.FromUtc(2027, 3, 4, 12, 0);
        var builder = new ForecastSeriesBuilder();
        for (var hour = 0; hour < 6; hour++)
        {
            var at = start + Duration.FromHours(hour);
            builder.Add(InstantQuantity.CloudAreaFraction, at, hour / 100.0);
            builder.Add(InstantQuantity.WindMps, at, hour / 3.6, hour < 2 ? Quality.Derived : Quality.Direct);
            builder.Add(InstantQuantity.DewPointC, at, Math.Sqrt(hour));
            builder.Add(PeriodQuantity.PrecipitationMm, at, at + Duration.FromHours(1), 0.1 * hour);
        }

        return builder.Build("met-norway", "mixed", start, Retrieved, Source, new ForecastCell(51.5, -0.1, 20));
    }

    private static void AssertSame(ForecastSeries expected, ForecastSeries given)
    {
        Assert.Equal(
            (expected.FeedId, expected.ModelId, expected.Member, expected.IssuedAt, expected.Attribution, expected.Cell),
            (given.FeedId, given.ModelId, given.Member, given.IssuedAt, given.Attribution, given.Cell));
        Assert.Equal(expected.Instants.Where(q => !q.Value.IsEmpty).Select(q => q.Key).Order(), given.Instants.Keys.Order());
        Assert.Equal(expected.Periods.Where(q => !q.Value.IsEmpty).Select(q => q.Key).Order(), given.Periods.Keys.Order());
        Assert.All(
            given.Instants,
            q =>
                Assert.Equal(
                    expected.Instants[q.Key].Select(p => (p.At, Bits(p.Value), p.Quality)),
                    q.Value.Select(p => (p.At, Bits(p.Value), p.Quality))));
        Assert.All(
            given.Periods,
            q =>
                Assert.Equal(
                    expected.Periods[q.Key].Select(p => (p.Start, p.End, Bits(p.Value), p.Quality)),
                    q.Value.Select(p => (p.Start, p.End, Bits(p.Value), p.Quality))));
    }

    private static long Bits(double value) => BitConverter.DoubleToInt64Bits(value);
}

using CsCheck;
using NightWatch.Planning.Ground;
using NightWatch.Planning.Watches;

namespace NightWatch.Planning.Tests.Ground;

public sealed class GroundWaterTests
{
    // Kohler and Linsley 1951: an index that keeps a share k a day of what fell; 10 mm, then dry, at k 0.9: 10, 9, 8.1.
    [Fact]
    public void Rain_of_unknown_hour_is_what_the_antecedent_index_leaves_of_it()
    {
        var traits = new GroundTraits(100, 100, 1, 1, 1, 0.9);
        var hourly = Math.Pow(0.9, 1 / 24.0);
        var hourByHour = Enumerable.Range(0, 72).Sum(h => 10.0 / 72 * Math.Pow(hourly, h + 0.5));
        Assert.Equal(hourByHour, GroundWater.AtStart(traits, 10), 4);
        Assert.Equal(0.9, Math.Pow(hourly, 24), 12);
    }

    [Fact]
    public void A_wet_night_stays_wet_till_morning_and_a_warm_day_dries_it()
    {
        // Rain ends at sunset; clear, calm, moist night; then a warm dry day. Hourly from 18:00.
        var weather = new Series(36);
        for (var i = 0; i < 36; i++)
        {
            var hour = (18 + i) % 24;
            weather.Sun[i] = 60 * Math.Sin((hour - 6) * Math.PI / 12);
            weather.Air[i] = 14 + 8 * Math.Sin((hour - 9) * Math.PI / 12);
            weather.Dew[i] = Math.Min(5, weather.Air[i]);
            weather.Wind[i] = weather.Sun[i] > 0 ? 4 : 1;
        }

        foreach (var kind in (GroundKind[])[GroundKind.Rock, GroundKind.Gravel, GroundKind.Grass])
        {
            var store = weather.Follow(kind, antecedentMm: 12);
            Assert.Equal(GroundState.Wet, GroundWater.StateOf(kind, store[0]));
            Assert.NotEqual(GroundState.Dry, GroundWater.StateOf(kind, store[10])); // 04:00
            var dry = Assert.NotNull(GroundWater.DryFromS(kind, store, 3600));
            Assert.InRange(dry / 3600, 12, 36);
        }

        Assert.Null(GroundWater.DryFromS(GroundKind.Clay, weather.Follow(GroundKind.Clay, 12), 3600));
    }

    [Fact]
    public void Rock_dries_before_grass_and_grass_before_clay()
    {
        var weather = new Series(96);
        for (var i = 0; i < 96; i++) (weather.Sun[i], weather.Air[i], weather.Dew[i], weather.Wind[i]) = (30, 18, 8, 3);
        double Dry(GroundKind kind) => GroundWater.DryFromS(kind, weather.Follow(kind, 20), 3600) ?? double.PositiveInfinity;
        Assert.True(Dry(GroundKind.Rock) < Dry(GroundKind.Gravel));
        Assert.True(Dry(GroundKind.Gravel) < Dry(GroundKind.Clay));
        Assert.True(Dry(GroundKind.Grass) < Dry(GroundKind.Clay));
    }

    [Fact]
    public void A_shower_in_the_forecast_wets_dry_ground()
    {
        var weather = new Series(24);
        weather.Rain[5] = 3;
        foreach (var kind in Enum.GetValues<GroundKind>())
        {
            var store = weather.Follow(kind, 0);
            Assert.Equal(GroundState.Dry, GroundWater.StateOf(kind, store[5]));
            Assert.NotEqual(GroundState.Dry, GroundWater.StateOf(kind, store[6]));
        }
    }

    [Fact]
    public void More_humidity_never_dries_the_ground_sooner() =>
        Gen.Select(
                Gen.Enum<GroundKind>(),
                Gen.Double[0, 40],
                Gen.Double[-5, 35],
                Gen.Double[0, 25],
                Gen.Double[0, 10],
                Gen.Double[0, 12],
                Gen.Double[0, 1],
                Gen.Double[-30, 60])
            .Sample(
                (kind, rain, air, depression, moister, wind, cloud, sun) =>
                {
                    double Dry(double dew)
                    {
                        var weather = new Series(120);
                        for (var i = 0; i < 120; i++)
                            (weather.Air[i], weather.Dew[i], weather.Wind[i], weather.Clouds[i], weather.Sun[i]) = (
                                air, dew, wind, cloud, sun);
                        return GroundWater.DryFromS(kind, weather.Follow(kind, rain), 3600) ?? double.PositiveInfinity;
                    }

                    var dewPoint = air - depression;
                    Assert.True(Dry(Math.Min(air, dewPoint + moister)) >= Dry(dewPoint));
                });

    [Fact]
    public void More_rain_never_leaves_less_water() =>
        Gen.Select(Gen.Enum<GroundKind>(), Gen.Double[0, 5].Array[30], Gen.Double[0, 3], Gen.Int[0, 29], Gen.Double[0, 30])
            .Sample(
                (kind, rain, more, at, before) =>
                {
                    var weather = new Series(30);
                    rain.CopyTo(weather.Rain, 0);
                    Array.Fill(weather.Sun, 40);
                    var less = weather.Follow(kind, before);
                    weather.Rain[at] += more;
                    var moreStore = weather.Follow(kind, before + more);
                    for (var i = 0; i < 30; i++) Assert.True(moreStore[i] >= less[i] - 1e-12);
                });

    [Fact]
    public void Unknown_rain_is_not_dry_ground()
    {
        var weather = new Series(24);
        Assert.All(
            weather.Follow(GroundKind.Grass, double.NaN),
            mm => Assert.Equal(GroundState.Unknown, GroundWater.StateOf(GroundKind.Grass, mm)));
        weather.Rain[3] = double.NaN;
        var store = weather.Follow(GroundKind.Grass, 0);
        Assert.Equal(GroundState.Dry, GroundWater.StateOf(GroundKind.Grass, store[3]));
        Assert.Equal(GroundState.Unknown, GroundWater.StateOf(GroundKind.Grass, store[4]));
    }

    [Fact]
    public void Drying_in_one_step_or_in_many_is_the_same() =>
        Gen.Select(Gen.Enum<GroundKind>(), Gen.Double[0, 12], Gen.Double[0, 3]).Sample((kind, store, potential) =>
        {
            var traits = GroundTraits.Of(kind);
            var stepped = store;
            for (var i = 0; i < 50; i++) stepped = GroundWater.Dried(traits, stepped, potential / 50);
            Assert.Equal(GroundWater.Dried(traits, store, potential), stepped, 1e-9);
        });

    [Fact]
    public void Series_of_different_length_are_refused() =>
        Assert.Throws<ArgumentException>(() => new Series(5).Follow(GroundKind.Rock, 0, steps: 4));

    private sealed class Series(int steps)
    {
        public double[] Rain { get; } = new double[steps];

        public double[] Air { get; } = Filled(steps, 12);

        public double[] Dew { get; } = Filled(steps, 8);

        public double[] Wind { get; } = Filled(steps, 2);

        public double[] Clouds { get; } = new double[steps];

        public double[] Sun { get; } = Filled(steps, -20);

        public double[] Follow(GroundKind kind, double antecedentMm, int? steps = null)
        {
            var store = new double[steps ?? Rain.Length];
            GroundWater.Follow(
                kind,
                antecedentMm,
                new GroundWeather
                {
                    StepS = 3600,
                    RainMmPerH = Rain,
                    AirC = Air,
                    DewPointC = Dew,
                    WindMps = Wind,
                    Cloud = Clouds,
                    SunAltitudeDeg = Sun,
                },
                300,
                store);
            return store;
        }

        private static double[] Filled(int steps, double value)
        {
            var series = new double[steps];
            Array.Fill(series, value);
            return series;
        }
    }
}

using CsCheck;
using NightWatch.Planning.Dew;

namespace NightWatch.Planning.Tests.Dew;

public sealed class LensDewTests
{
    // A bare 77 mm element of 0.10 kg aimed at the horizon; the wind column is the wind at the glass.
    private static readonly FrontElement Lens = new(77, 0.10) { WindShare = 1 };

    // Explicit 10 s integration of the same balance in a separate program: air, dew point, cloud, wind, resting temperature,
    // time constant (min), minutes to the dew point from air temperature (NaN: never), watts at the glass for dew point + 2.
    public static TheoryData<double, double, double, double, double, double, double, double> Integrated => new()
    {
        { 10, 8, 0, 0, 4.622, 40.4, 19.3, 0.183 },
        { 10, 8, 0, 1, 6.201, 28.8, 21.8, 0.183 },
        { 10, 8, 0, 3, 7.601, 18.3, 33.0, 0.183 },
        { 10, 8, 1, 1, 9.397, 28.8, double.NaN, 0.029 },
        { 10, 5, 0, 1, 5.887, 28.8, double.NaN, 0.052 },
        { 20, 18.5, 0, 1, 17.219, 27.5, 21.5, 0.166 },
    };

    [Theory]
    [MemberData(nameof(Integrated))]
    public void The_stepped_balance_matches_a_fine_integration(
        double airC, double dewPointC, double cloud, double windMps, double restingC, double constantMin, double onsetMin, double watts)
    {
        Assert.Equal(restingC, LensHeat.RestingC(Lens, airC, dewPointC, cloud, windMps), 2);
        Assert.Equal(constantMin, LensHeat.TimeConstantS(Lens, airC, windMps) / 60, 1);
        Assert.Equal(watts, LensHeat.PowerToHoldW(Lens with { HeaterCoupling = 1 }, dewPointC + 2, airC, dewPointC, cloud, windMps), 2);

        var night = new Night(airC, dewPointC, cloud, windMps, steps: 72);
        var outcome = night.Evaluate(Lens, heaterW: 0);
        if (double.IsNaN(onsetMin)) Assert.Null(outcome.OnsetS);
        else Assert.InRange(outcome.OnsetS!.Value / 60, onsetMin - 0.5, onsetMin + 0.5);
    }

    // The row 0, -2, clear, 0.5 m/s of the same table reaches the dew point after 18.0 min; frost must come before.
    [Fact]
    public void Frost_comes_before_the_dew_point_is_reached()
    {
        var outcome = new Night(0, -2, 0, 0.5, steps: 72).Evaluate(Lens, heaterW: 0);
        Assert.True(outcome.IsFrost);
        Assert.InRange(outcome.OnsetS!.Value / 60, 12, 17.9);
    }

    [Fact]
    public void Five_minute_steps_agree_with_ten_second_Euler_steps_on_a_changing_night()
    {
        const int steps = 145;
        double[] air = new double[steps],
            dew = new double[steps],
            cloud = new double[steps],
            wind = new double[steps],
            lens = new double[steps];
        for (var i = 0; i < steps; i++)
        {
            air[i] = 14 - 8.0 * i / steps;
            dew[i] = 7 - 2.0 * i / steps;
            cloud[i] = 0.5 + 0.5 * Math.Sin(i / 9.0);
            wind[i] = 1.5 + Math.Sin(i / 5.0);
        }

        LensHeat.Follow(Lens, new NightAir(300, air, dew, cloud, wind), 18, 0, int.MaxValue, lens);
        var temperature = 18.0;
        for (var i = 1; i < steps; i++)
        {
            for (var s = 0; s < 30; s++)
            {
                var u = (s + 0.5) / 30;
                double At(double[] series) => series[i - 1] + u * (series[i] - series[i - 1]);
                var received = SkyEmissivity.UnderCloud(SkyEmissivity.Clear(At(dew)), At(cloud));
                var kelvin = temperature + 273.15;
                var fourth = Math.Pow(At(air) + 273.15, 4);
                var watts = Lens.AreaM2 * (0.9 * 5.670374e-8 * (0.5 * received * fourth + 0.5 * fourth - Math.Pow(kelvin, 4))
                    + (2.8 + 3.0 * At(wind)) * (At(air) - temperature));
                temperature += 10 * watts / Lens.HeatCapacityJPerK;
            }

            Assert.Equal(temperature, lens[i], 0.03);
        }
    }

    [Fact]
    public void More_wind_never_brings_dew_earlier_to_a_lens_no_warmer_than_the_air() =>
        Gen.Select(Gen.Double[-15, 25], Gen.Double[0.1, 12], Gen.Double[0, 1], Gen.Double[0, 10], Gen.Double[0, 10])
            .Sample(
                (airC, depression, cloud, windMps, moreMps) =>
                {
                    var calm = new Night(airC, airC - depression, cloud, windMps, 96).Evaluate(Lens, 0).OnsetS ?? double.PositiveInfinity;
                    var windy =
                        new Night(airC, airC - depression, cloud, windMps + moreMps, 96).Evaluate(Lens, 0).OnsetS
                        ?? double.PositiveInfinity;
                    Assert.True(windy >= calm - 1e-6, $"{windy} s before {calm} s");
                });

    [Fact]
    public void More_cloud_never_cools_the_lens() =>
        Gen.Select(Gen.Double[-15, 25].Array[49], Gen.Double[0, 1].Array[49], Gen.Double[0, 1], Gen.Double[0, 8], Gen.Double[-10, 30])
            .Sample(
                (airC, cloud, more, windMps, startC) =>
                {
                    var dew = airC.Select(a => a - 3).ToArray();
                    var wind = Enumerable.Repeat(windMps, airC.Length).ToArray();
                    var clouded = cloud.Select(c => Math.Min(1, c + more)).ToArray();
                    double[] before = new double[airC.Length],
                        after = new double[airC.Length];
                    LensHeat.Follow(Lens, new NightAir(300, airC, dew, cloud, wind), startC, 0, int.MaxValue, before);
                    LensHeat.Follow(Lens, new NightAir(300, airC, dew, clouded, wind), startC, 0, int.MaxValue, after);
                    for (var i = 0; i < airC.Length; i++)
                        Assert.True(after[i] >= before[i] - 1e-9, $"step {i}: {after[i]} below {before[i]}");
                },
                iter: 2000);

    [Fact]
    public void The_heater_said_to_be_needed_keeps_the_lens_clear_and_a_third_of_it_does_not()
    {
        var night = new Night(10, 8, 0, 1, 96);
        var bare = night.Evaluate(Lens, heaterW: 0);
        Assert.InRange(bare.HeaterNeededW, 0.8, 1.0); // 0.183 W at the glass through a coupling of 0.2
        Assert.Equal(0, bare.SwitchOnS);              // it starts at the margin of 2 K exactly

        var heated = night.Evaluate(Lens, bare.HeaterNeededW);
        Assert.Null(heated.HeatedOnsetS);
        Assert.InRange(heated.HeatedLeastMarginK, 1.9, 2.1);
        Assert.NotNull(night.Evaluate(Lens, bare.HeaterNeededW / 3).HeatedOnsetS);
    }

    [Fact]
    public void A_cold_lens_taken_into_warm_moist_air_dews_at_once()
    {
        var outcome = new Night(18, 16, 0.5, 1, 24) { StartC = 8 }.Evaluate(Lens, 0);
        Assert.Equal(0, outcome.OnsetS);
        Assert.Equal(0, outcome.SwitchOnS);
    }

    [Fact]
    public void A_warm_lens_from_the_car_gains_time()
    {
        var cold = new Night(10, 8, 0, 1, 96).Evaluate(Lens, 0).OnsetS;
        var warm = new Night(10, 8, 0, 1, 96) { StartC = 20 }.Evaluate(Lens, 0).OnsetS;
        Assert.True(warm > cold + 1200);
    }

    [Fact]
    public void Unknown_weather_is_not_a_dry_lens()
    {
        var night = new Night(10, 8, 0, 1, 48);
        Array.Fill(night.Wind, double.NaN, 10, 20);
        var outcome = night.Evaluate(Lens, 0);
        Assert.Equal(20, outcome.UnknownSamples);
        Assert.True(double.IsNaN(night.Margins[10]) && double.IsNaN(night.Margins[29]));
        Assert.True(night.Margins[30] < 0, "after the gap the lens rests at its coldest");

        Array.Fill(night.Wind, double.NaN);
        outcome = night.Evaluate(Lens, 0);
        Assert.Null(outcome.OnsetS);
        Assert.Equal(48, outcome.UnknownSamples);
        Assert.True(double.IsNaN(outcome.LeastMarginK));
    }

    [Fact]
    public void A_heater_that_dries_a_wet_lens_after_the_first_frame_has_not_kept_it_clear()
    {
        // The element comes out of a cold bag, 4 K below the dew point of air at 10 °C, and the heater needs minutes to dry it.
        var night = new Night(airC: 10, dewPointC: 9, cloud: 0.5, windMps: 1, steps: 48) { StartC = 5 };

        var inTime = night.Evaluate(Lens, heaterW: 4, dryByS: 7200);
        Assert.Equal(0, inTime.OnsetS);
        Assert.Null(inTime.HeatedOnsetS);
        Assert.True(inTime.HeatedLeastMarginK > 0);

        var late = night.Evaluate(Lens, heaterW: 4, dryByS: 0);
        Assert.Equal(0, late.HeatedOnsetS);
        Assert.True(late.HeatedLeastMarginK < 0);
    }

    [Fact]
    public void Series_of_different_length_are_refused()
    {
        Assert.Throws<ArgumentException>(() => new NightAir(300, [1, 2], [1], [0, 0], [1, 1]).Count);
        Assert.Throws<ArgumentException>(() =>
            LensHeat.Follow(Lens, new NightAir(300, [1, 2], [1, 1], [0, 0], [1, 1]), 10, 0, 0, new double[1]));
    }

    [Theory]
    [InlineData(0, 0.5)]
    [InlineData(30, 0.75)]
    [InlineData(90, 1)]
    public void A_lens_that_looks_up_sees_more_sky(double altitudeDeg, double share) =>
        Assert.Equal(share, FrontElement.SkyViewAt(altitudeDeg), 9);

    private sealed class Night(double airC, double dewPointC, double cloud, double windMps, int steps)
    {
        public double[] Wind { get; } = Filled(windMps, steps);

        public double[] Margins { get; } = new double[steps];

        public double? StartC { get; init; }

        public LensDewOutcome Evaluate(FrontElement lens, double heaterW, double dryByS = double.PositiveInfinity) => LensDew.Along(
            lens,
            new NightAir(300, Filled(airC, steps), Filled(dewPointC, steps), Filled(cloud, steps), Wind),
            new LensWish(StartC ?? airC, heaterW, MarginK: 2) { DryByS = dryByS },
            new LensSamples { ElementC = new double[steps], MarginsK = Margins });

        private static double[] Filled(double value, int steps)
        {
            var series = new double[steps];
            Array.Fill(series, value);
            return series;
        }
    }
}

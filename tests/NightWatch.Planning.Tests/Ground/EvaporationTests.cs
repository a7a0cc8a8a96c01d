using NightWatch.Planning.Ground;

namespace NightWatch.Planning.Tests.Ground;

// FAO-56 (Allen, Pereira, Raes and Smith 1998): the paper's worked examples, also held in the test suites of pyeto and pyet.
public sealed class EvaporationTests
{
    [Fact]
    public void Properties_of_air_match_the_examples()
    {
        Assert.Equal(81.8, FaoAir.PressureKPa(1800), 1);              // example 2
        Assert.Equal(0.054, FaoAir.PsychrometricKPaPerC(1800), 3);    // example 2
        Assert.Equal(3.075, FaoAir.SaturationKPa(24.5), 3);           // example 3
        Assert.Equal(1.705, FaoAir.SaturationKPa(15), 3);             // example 3
        Assert.Equal(0.246, FaoAir.SlopeKPaPerC(30.2), 3);            // example 17
        Assert.Equal(2.4, FaoAir.WindAt2M(3.2, 10), 1);               // example 14
        Assert.Equal(2.078, FaoAir.WindAt2M(2.78, 10), 0.002);           // example 18
    }

    // Example 17, Bangkok, April, 2 m: Ra 38.06, N 12.31, n 8.5, ea 2.85, u2 2, T 34.8 and 25.6, G 0.14.
    [Fact]
    public void Bangkok_in_April_evaporates_5_72_mm_a_day()
    {
        var solar = Radiation.Solar(38.06, 8.5 / 12.31);
        Assert.Equal(22.65, solar, 0.011);
        var longWave = Radiation.NetLongWaveOfDay(34.8, 25.6, 2.85, solar / Radiation.ClearSky(38.06, 2));
        Assert.Equal(3.11, longWave, 0.011);
        var net = Radiation.Net(solar, longWave);
        Assert.Equal(14.33, net, 0.011);
        Assert.Equal(5.72, Evaporation.GrassMmPerDay(34.8, 25.6, 2.85, 2, net - 0.14, 2), 0.011);
    }

    // Example 18, Brussels, 6 July, 100 m: Ra 41.09, N 16.1, n 9.25, ea 1.409, u 2.78 at 10 m, T 21.5 and 12.3.
    [Fact]
    public void Brussels_in_July_evaporates_3_9_mm_a_day()
    {
        var solar = Radiation.Solar(41.09, 9.25 / 16.1);
        Assert.Equal(22.07, solar, 0.011);
        Assert.Equal(30.90, Radiation.ClearSky(41.09, 100), 0.011);
        var longWave = Radiation.NetLongWaveOfDay(21.5, 12.3, 1.409, solar / 30.90);
        Assert.Equal(3.71, longWave, 0.011);
        var net = Radiation.Net(solar, longWave);
        Assert.Equal(13.28, net, 0.011);
        Assert.Equal(3.88, Evaporation.GrassMmPerDay(21.5, 12.3, 1.409, 2.078, net, 100), 0.011);
    }

    // Example 19, N'Diaye, 1 October, 8 m, one night hour and one day hour (inputs from memory; every intermediate of the paper comes out).
    [Fact]
    public void Ndiaye_at_night_evaporates_nothing()
    {
        var longWave = Radiation.NetLongWave(28, 3.402, 0.8);
        Assert.Equal(0.100, longWave, 3);
        Assert.Equal(0.00, Evaporation.GrassMmPerHour(28, 3.402, 1.9, -longWave + 0.5 * longWave, 8), 2);
    }

    [Fact]
    public void Ndiaye_in_the_afternoon_evaporates_0_63_mm_an_hour()
    {
        Assert.Equal(0.358, FaoAir.SlopeKPaPerC(38), 3);
        Assert.Equal(2.658, Radiation.ClearSky(3.543, 8), 3);
        var longWave = Radiation.NetLongWave(38, 3.445, 2.450 / 2.658);
        Assert.Equal(0.137, longWave, 3);
        var net = Radiation.Net(2.450, longWave);
        Assert.Equal(1.749, net, 3);
        Assert.Equal(0.63, Evaporation.GrassMmPerHour(38, 3.445, 3.3, net - 0.175, 8), 2);
    }

    // The same hour's Ra 3.543 MJ/m²: by eq. 24, 31 and 33 the Sun stands 46.24 degrees high in the middle of it.
    [Fact]
    public void Sunlight_above_the_atmosphere_follows_from_the_suns_altitude()
    {
        Assert.InRange(Radiation.Extraterrestrial(46.24) / 3.543, 0.99, 1.01);
        Assert.Equal(0, Radiation.Extraterrestrial(-5));
    }

    // Shuttleworth 1993, Handbook of Hydrology, ch. 4: the drying term alone at 2 m/s and 1 kPa is 6.43 (1 + 0.536 u) / 2.45 = 5.438 mm a
    // day.
    [Fact]
    public void A_film_dries_by_wind_as_Shuttleworth_has_it()
    {
        var slope = FaoAir.SlopeKPaPerC(20);
        var gamma = FaoAir.PsychrometricKPaPerC(0);
        var film = Evaporation.FilmMmPerHour(20, FaoAir.SaturationKPa(20) - 1, 2, 0, 0);
        Assert.Equal(5.438, film * 24 * (slope + gamma) / gamma, 3);
    }
}

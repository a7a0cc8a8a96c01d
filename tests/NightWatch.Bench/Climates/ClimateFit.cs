using NightWatch.Weather.Fake;
using NightWatch.Weather.Feeds;
using NodaTime;

namespace NightWatch.Bench.Climates;

/// <summary>Makes a climate of a station's typical year: its quantiles, and the persistence that gives its nights.</summary>
internal static class ClimateFit
{
    private const int Seeds = 5;
    private const double CloudStep = 0.1;
    private const double OtherStep = 0.1;

    private static readonly double[] slowShares = [0.5, 0.55, 0.6, 0.65, 0.7, 0.75, 0.8, 0.85, 0.9, 0.95];
    private static readonly double[] slowHours = [16, 20, 24, 28, 32, 36, 42, 48, 56, 66];
    private static readonly double[] moistureHours = [3, 4, 5, 6, 7, 9, 12, 16, 20, 26, 32, 40, 50];
    private static readonly Instant start = Instant.FromUtc(2031, 1, 1, 0, 0);

    public static Climate Of(TypicalYear year, double bias)
    {
        var cells = year.Hours.ToLookup(hour => (hour.Month - 1, (int)(hour.SolarHour * StationTable.Blocks / 24)));
        var climate = new Climate
        {
            Cloud = Table(cells, hour => hour.Cloud, CloudStep, 0.5, 1),
            DepressionK = Table(cells, hour => hour.DepressionK, OtherStep, 0, double.PositiveInfinity),
            WindMps = Table(cells, hour => hour.WindMps, OtherStep, 0.5, double.PositiveInfinity),
            Nights = year.Nights(),
            SlowShare = 0.8,
            SlowH = 28,
            MoistureH = 28,
            CloudMoisture = CloudMoisture(cells),
            Bias = bias,
        };
        climate = Best(
            from share in slowShares from hours in slowHours select climate with { SlowShare = share, SlowH = hours },
            made => Square(made.AtMost20 - climate.Nights.AtMost20, 0.02) + Square(made.AtMost45 - climate.Nights.AtMost45, 0.02)
                + Square(made.NightToNight - climate.Nights.NightToNight, 0.03));
        return Best(
            moistureHours.Select(hours => climate with { MoistureH = hours }),
            made => Square(made.MedianLeastDepressionK - climate.Nights.MedianLeastDepressionK, 0.1 * climate.Nights.MedianLeastDepressionK)
                + Square(made.Within2K - climate.Nights.Within2K, 0.03));

        Climate Best(IEnumerable<Climate> tried, Func<StationFigures, double> error) =>
            tried.AsParallel().MinBy(one => error(Made(year, one)))!;
    }

    /// <summary>The nights of the invented weather at the station, in one year of several worlds.</summary>
    public static StationFigures Made(TypicalYear year, Climate climate)
    {
        var place = new ForecastPlace(year.LatitudeDeg, year.LongitudeDeg, 0);
        var (cloud, depression) = (new List<double>(), new List<double>());
        for (var seed = 0; seed < Seeds; seed++)
        {
            var weather = new FakeWeather(seed, climate);
            for (var day = 0; day < 365; day++)
            {
                var states = Enumerable.Range(0, StationFigures.Hours)
                    .Select(hour => weather.At(place, start + Duration.FromHours(24 * day + 20.5 - year.ZoneH + hour))).ToList();
                cloud.Add(states.Average(state => state.Cloud));
                depression.Add(states.Min(state => state.AirC - state.DewPointC));
            }
        }

        return StationFigures.Of(cloud, depression);
    }

    private static StationTable Table(
        ILookup<(int, int), TypicalHour> cells, Func<TypicalHour, double> of, double step, double above, double most) =>
        new([
            .. from month in Enumerable.Range(0, StationTable.Months)
            from block in Enumerable.Range(0, StationTable.Blocks)
            from value in Quantiles([.. cells[(month, block)].Select(of).Order()], step, above, most)
            select value,
        ]);

    /// <summary>
    /// Values written in steps are spread evenly over the step: about the value, or below it, so that "at most" counts them.
    /// </summary>
    private static IEnumerable<double> Quantiles(double[] sorted, double step, double above, double most)
    {
        var spread = sorted.GroupBy(value => value).SelectMany(tie =>
            tie.Select((value, i) => Math.Clamp(value + step * ((i + 0.5) / tie.Count() - 1 + above), 0, most))).ToArray();
        for (var level = 0; level < StationTable.Levels; level++)
        {
            var rank = Normal(StationTable.FirstScore + StationTable.ScoreStep * level) * spread.Length - 0.5;
            var below = Math.Clamp((int)Math.Floor(rank), 0, spread.Length - 2);
            yield return spread[below] + Math.Clamp(rank - below, 0, 1) * (spread[below + 1] - spread[below]);
        }
    }

    /// <summary>Mean product of the normal scores of cloud and of a small depression, month and time of day set aside.</summary>
    private static double CloudMoisture(ILookup<(int, int), TypicalHour> cells)
    {
        var pairs = cells.SelectMany(cell => Scores(cell, hour => hour.Cloud).Zip(Scores(cell, hour => -hour.DepressionK))).ToList();
        return StationFigures.Correlation([.. pairs.Select(pair => pair.First)], [.. pairs.Select(pair => pair.Second)]);
    }

    private static double[] Scores(IEnumerable<TypicalHour> cell, Func<TypicalHour, double> of)
    {
        double[] values = [.. cell.Select(of)];
        return
        [
            .. values.Select(value =>
                Score((values.Count(other => other < value) + 0.5 * values.Count(other => other == value)) / values.Length)),
        ];
    }

    private static double Score(double share)
    {
        var (low, high) = (-4.0, 4.0);
        for (var i = 0; i < 30; i++) (low, high) = Normal((low + high) / 2) < share ? ((low + high) / 2, high) : (low, (low + high) / 2);
        return (low + high) / 2;
    }

    /// <summary>The normal distribution's integral (Zelen and Severo 1964, 26.2.17), to 1e-7.</summary>
    private static double Normal(double x)
    {
        if (x < 0) return 1 - Normal(-x);
        var t = 1 / (1 + 0.2316419 * x);
        return 1 - Math.Exp(-x * x / 2) / Math.Sqrt(2 * Math.PI)
            * t * (0.319381530 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
    }

    private static double Square(double error, double scale) => error * error / (scale * scale);
}

using CsCheck;
using NightWatch.Planning.Chance;

namespace NightWatch.Planning.Tests.Chance;

/// <summary>Invented forecasts for properties of the chance.</summary>
internal static class Forecasts
{
    private static readonly Gen<double> PerhapsUnknown = Gen.Frequency((4, Gen.Double[0, 1]), (1, Gen.Const(double.NaN)));

    public static Gen<ForecastFigures> Run { get; } =
        from usable in Gen.Double[0, 600]
        from rest in Gen.Double[0, 300]
        from stretch in Gen.Double[0, 1]
        from gust in PerhapsUnknown
        from rain in PerhapsUnknown
        select new ForecastFigures(usable, usable + rest, stretch, gust * 25, rain);

    /// <summary>None, one or several, as often.</summary>
    public static Gen<AgedForecast[]> Others { get; } = Gen.OneOf(
        Gen.Const(Array.Empty<AgedForecast>()),
        Gen.Select(Run, Gen.Double[0, 60], (run, age) => new AgedForecast(run, age)).Array[1, 12]);

    public static Gen<ChanceFigures> Figures { get; } =
        Gen.Select(Run, Others, Gen.Double[30, 300], Gen.Double[0, 700], ChanceFigures.Of);

    /// <summary>Nights of a record, with one to three looks each at two places, and whatever came.</summary>
    public static Gen<ChanceRow[][]> Record { get; } =
        (from place in Gen.OneOf(Gen.Const("hill"), Gen.Const("moor"))
         from figures in Figures
         from usable in Gen.Bool
         select new ChanceRow(place, figures, usable)).Array[1, 3].Array[0, 40];

    public static ChanceLearning Learnt(ChancePrior prior, int lead, IEnumerable<ChanceRow[]> record) =>
        record.Aggregate(ChanceLearning.Start(prior, lead), (learning, night) => learning.After(night));
}

using NightWatch.Planning.Conditions;
using NightWatch.Planning.Grid;
using NightWatch.Planning.Watches;
using NodaTime;

namespace NightWatch.Planning.Power;

/// <summary>Works out whether the packs last, derated for the coldest air while they are out.</summary>
internal static class PowerPlanner
{
    /// <param name="kit">Packs, draw, heater.</param>
    /// <param name="grid">The grid.</param>
    /// <param name="weather">Air temperature.</param>
    /// <param name="heaterOn">When the heater goes on; null: never.</param>
    /// <param name="on">Power-on to the last frame.</param>
    public static PowerPlan Plan(Kit kit, NightGrid grid, WeatherTrack weather, Instant? heaterOn, Interval on)
    {
        var coldest = double.NaN;
        var (first, last) = grid.Cells(on);
        for (var cell = first; cell <= last; cell++)
        {
            if (weather.AirC[cell] < coldest || double.IsNaN(coldest)) coldest = weather.AirC[cell];
        }

        var budget = PowerBudget.Of(new PowerNeed
        {
            BatteriesWh = kit.BatteriesWh,
            CameraAndRailW = kit.CameraAndRailW,
            DurationS = on.Duration.TotalSeconds,
            ColdestC = coldest,
            HeaterW = heaterOn is null ? 0 : kit.DewHeaterW,
            HeaterFromS = heaterOn is { } heat ? (heat - on.Start).TotalSeconds : 0,
            HeaterBatteryWh = kit.DewHeaterBatteryWh,
        });
        return new PowerPlan(budget)
        {
            On = on,
            ColdestC = double.IsNaN(coldest) ? null : coldest,
            Swaps = [.. budget.SwapsS.Select(seconds => on.Start + Duration.FromSeconds(seconds))],
            Empty = After(budget.EmptyS),
            HeaterEmpty = After(budget.HeaterEmptyS),
        };

        Instant? After(double? seconds) => seconds is { } s ? on.Start + Duration.FromSeconds(s) : null;
    }
}

using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Planning.Conditions;

/// <summary>The forecast read onto the grid: one array a quantity, NaN where unknown (never zero).</summary>
internal sealed class WeatherTrack
{
    private const double Unknown = double.NaN;

    /// <summary>Steps longer than this cannot place a cloud edge in the night.</summary>
    private static readonly Duration CoarseFrom = Duration.FromHours(4);

    public required double[] Cloud { get; init; }

    public required double[] LowCloud { get; init; }

    public required double[] MediumCloud { get; init; }

    public required double[] HighCloud { get; init; }

    public required double[] AirC { get; init; }

    public required double[] DewPointC { get; init; }

    public required double[] Humidity { get; init; }

    public required double[] WindMps { get; init; }

    public required double[] GustMps { get; init; }

    /// <summary>mm/h.</summary>
    public required double[] Rain { get; init; }

    public required double[] RainProbability { get; init; }

    public required double[] Fog { get; init; }

    public required double[] VisibilityM { get; init; }

    public required double[] Thunder { get; init; }

    public required double[] Cape { get; init; }

    /// <summary>The feed's own step for cloud is six hours or so somewhere in the night, or the night has fewer than three cloud values.</summary>
    public bool Coarse { get; init; }

    /// <summary>Nothing known at all.</summary>
    public static WeatherTrack None(int count)
    {
        var nothing = Filled(count);
        return new WeatherTrack
        {
            Cloud = nothing, LowCloud = nothing, MediumCloud = nothing, HighCloud = nothing, AirC = nothing, DewPointC = nothing,
            Humidity = nothing, WindMps = nothing, GustMps = nothing, Rain = nothing, RainProbability = nothing, Fog = nothing,
            VisibilityM = nothing, Thunder = nothing, Cape = nothing,
        };
    }

    /// <summary>Reads a series onto the grid: instants interpolated at each cell's start, periods by overlap with the cell.</summary>
    public static WeatherTrack Of(ForecastSeries? series, NightGrid grid)
    {
        if (series is null) return None(grid.Count);
        var cloud = Instants(series, InstantQuantity.CloudAreaFraction, grid, out var coarse);
        return new WeatherTrack
        {
            Cloud = cloud,
            LowCloud = Instants(series, InstantQuantity.LowCloudAreaFraction, grid, out _),
            MediumCloud = Instants(series, InstantQuantity.MediumCloudAreaFraction, grid, out _),
            HighCloud = Instants(series, InstantQuantity.HighCloudAreaFraction, grid, out _),
            AirC = Instants(series, InstantQuantity.AirTemperatureC, grid, out _),
            DewPointC = Instants(series, InstantQuantity.DewPointC, grid, out _),
            Humidity = Instants(series, InstantQuantity.RelativeHumidity, grid, out _),
            WindMps = Instants(series, InstantQuantity.WindMps, grid, out _),
            Fog = Instants(series, InstantQuantity.FogAreaFraction, grid, out _),
            VisibilityM = Instants(series, InstantQuantity.VisibilityM, grid, out _),
            Cape = Instants(series, InstantQuantity.CapeJPerKg, grid, out _),
            Rain = Periods(series, PeriodQuantity.PrecipitationMm, grid, scale: 1 / NightGrid.Step.TotalHours),
            RainProbability = Periods(series, PeriodQuantity.PrecipitationProbability, grid),
            GustMps = Periods(series, PeriodQuantity.GustMps, grid),
            Thunder = Periods(series, PeriodQuantity.ThunderProbability, grid),
            Coarse = coarse,
        };
    }

    /// <summary>
    /// A member or an earlier run that must also pass where it says nothing: its own values first, the main forecast's where a whole
    /// quantity is missing. Where neither knows, the quantity stays unknown.
    /// </summary>
    public WeatherTrack CompletedBy(WeatherTrack main) => new()
    {
        Cloud = Cloud,
        LowCloud = LowCloud,
        MediumCloud = MediumCloud,
        HighCloud = HighCloud,
        AirC = OwnOr(AirC, main.AirC),
        DewPointC = OwnOr(DewPointC, main.DewPointC),
        Humidity = OwnOr(Humidity, main.Humidity),
        WindMps = OwnOr(WindMps, main.WindMps),
        GustMps = OwnOr(GustMps, main.GustMps),
        Rain = OwnOr(Rain, main.Rain),
        RainProbability = OwnOr(RainProbability, main.RainProbability),
        Fog = OwnOr(Fog, main.Fog),
        VisibilityM = OwnOr(VisibilityM, main.VisibilityM),
        Thunder = OwnOr(Thunder, main.Thunder),
        Cape = OwnOr(Cape, main.Cape),
        Coarse = Coarse,
    };

    private static double[] OwnOr(double[] own, double[] main) => Array.TrueForAll(own, double.IsNaN) ? main : own;

    private static double[] Instants(ForecastSeries series, InstantQuantity quantity, NightGrid grid, out bool coarse)
    {
        coarse = false;
        var values = Filled(grid.Count);
        if (!series.Instants.TryGetValue(quantity, out var points) || points.Length == 0) return values;
        for (var cell = 0; cell < values.Length; cell++)
        {
            var reading = series.At(quantity, grid.At(cell));
            if (reading.Value is not { } value) continue;
            values[cell] = value;
            coarse |= reading.NativeStep >= CoarseFrom;
        }

        var span = grid.Span;
        coarse |= points.Count(point => span.Contains(point.At)) < 3;
        return values;
    }

    private static double[] Periods(ForecastSeries series, PeriodQuantity quantity, NightGrid grid, double scale = 1)
    {
        var values = Filled(grid.Count);
        if (!series.Periods.TryGetValue(quantity, out var points) || points.Length == 0) return values;
        for (var cell = 0; cell < values.Length; cell++)
        {
            if (series.Over(quantity, grid.Cell(cell)).Value is { } value) values[cell] = value * scale;
        }

        return values;
    }

    private static double[] Filled(int count)
    {
        var values = new double[count];
        Array.Fill(values, Unknown);
        return values;
    }
}

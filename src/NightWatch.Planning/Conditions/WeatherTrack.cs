using NightWatch.Planning.Grid;
using NightWatch.Weather.Series;
using NodaTime;

namespace NightWatch.Planning.Conditions;

/// <summary>The forecast read onto the grid: one array a quantity, NaN where unknown (never zero).</summary>
internal sealed record WeatherTrack
{
    private const double Unknown = double.NaN;

    /// <summary>Steps longer than this cannot place a cloud edge in the night.</summary>
    private static readonly Duration CoarseFrom = Duration.FromHours(4);

    /// <summary>No feed has coarser steps; a wider gap is a hole, not a step.</summary>
    private static readonly Duration LongestFeedStep = Duration.FromHours(6);

    public required double[] Cloud { get; init; }

    public required double[] LowCloud { get; init; }

    public required double[] MediumCloud { get; init; }

    public required double[] HighCloud { get; init; }

    public required double[] AirC { get; init; }

    public required double[] DewPointC { get; init; }

    public required double[] Humidity { get; init; }

    public required double[] WindMps { get; init; }

    public required double[] GustMps { get; init; }

    /// <summary>Rate of precipitation, mm/h; NaN: unknown.</summary>
    public required double[] Rain { get; init; }

    public required double[] RainProbability { get; init; }

    public required double[] Fog { get; init; }

    public required double[] VisibilityM { get; init; }

    public required double[] Thunder { get; init; }

    public required double[] Cape { get; init; }

    /// <summary>
    /// The feed's own step for cloud is six hours or so somewhere in the night, or the night has fewer than three cloud values.
    /// </summary>
    public bool Coarse { get; init; }

    /// <summary>Nothing known at all.</summary>
    public static WeatherTrack None(int count)
    {
        var nothing = Filled(count);
        return new WeatherTrack
        {
            Cloud = nothing,
            LowCloud = nothing,
            MediumCloud = nothing,
            HighCloud = nothing,
            AirC = nothing,
            DewPointC = nothing,
            Humidity = nothing,
            WindMps = nothing,
            GustMps = nothing,
            Rain = nothing,
            RainProbability = nothing,
            Fog = nothing,
            VisibilityM = nothing,
            Thunder = nothing,
            Cape = nothing,
        };
    }

    /// <summary>Reads a series onto the grid: instants interpolated at each cell's start, periods by overlap with the cell.</summary>
    public static WeatherTrack Of(ForecastSeries? series, NightGrid grid)
    {
        if (series is null) return None(grid.Count);
        var (first, last) = (0, grid.Count - 1);
        var unknown = Filled(grid.Count);
        return Deciding(series, grid, first, last, unknown) with
        {
            LowCloud = Instants(series, InstantQuantity.LowCloudAreaFraction, grid, first, last, unknown),
            MediumCloud = Instants(series, InstantQuantity.MediumCloudAreaFraction, grid, first, last, unknown),
            HighCloud = Instants(series, InstantQuantity.HighCloudAreaFraction, grid, first, last, unknown),
            Humidity = Instants(series, InstantQuantity.RelativeHumidity, grid, first, last, unknown),
            Coarse = IsCoarse(series, grid),
        };
    }

    /// <summary>
    /// The same, but only the quantities that shape the run, and only in some cells: for the many members of an ensemble.
    /// </summary>
    public static WeatherTrack Deciding(ForecastSeries series, NightGrid grid, int first, int last) =>
        Deciding(series, grid, first, last, Filled(grid.Count));

    private static WeatherTrack Deciding(ForecastSeries series, NightGrid grid, int first, int last, double[] unknown) => new()
    {
        Cloud = Instants(series, InstantQuantity.CloudAreaFraction, grid, first, last, unknown),
        LowCloud = unknown,
        MediumCloud = unknown,
        HighCloud = unknown,
        AirC = Instants(series, InstantQuantity.AirTemperatureC, grid, first, last, unknown),
        DewPointC = Instants(series, InstantQuantity.DewPointC, grid, first, last, unknown),
        Humidity = unknown,
        WindMps = Instants(series, InstantQuantity.WindMps, grid, first, last, unknown),
        Fog = Instants(series, InstantQuantity.FogAreaFraction, grid, first, last, unknown),
        VisibilityM = Instants(series, InstantQuantity.VisibilityM, grid, first, last, unknown),
        Cape = Instants(series, InstantQuantity.CapeJPerKg, grid, first, last, unknown),
        Rain = Periods(series, PeriodQuantity.PrecipitationMm, grid, first, last, unknown, scale: 1 / NightGrid.Step.TotalHours),
        RainProbability = Periods(series, PeriodQuantity.PrecipitationProbability, grid, first, last, unknown),
        GustMps = Periods(series, PeriodQuantity.GustMps, grid, first, last, unknown),
        Thunder = Periods(series, PeriodQuantity.ThunderProbability, grid, first, last, unknown),
    };

    /// <summary>
    /// A member or an earlier run that must also pass where it says nothing: its own values first, the main forecast's where a whole
    /// quantity is missing. Where neither knows, the quantity stays unknown.
    /// </summary>
    public WeatherTrack CompletedBy(WeatherTrack main) => this with
    {
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
    };

    private static double[] OwnOr(double[] own, double[] main) => Array.TrueForAll(own, double.IsNaN) ? main : own;

    private static bool IsCoarse(ForecastSeries series, NightGrid grid)
    {
        if (!series.Instants.TryGetValue(InstantQuantity.CloudAreaFraction, out var points) || points.Length == 0) return false;
        var span = grid.Span;
        var inside = 0;
        for (var i = 0; i < points.Length; i++)
        {
            if (points[i].At < span.Start || points[i].At >= span.End) continue;
            inside++;
            if (i > 0 && points[i].At - points[i - 1].At is var gap && gap >= CoarseFrom && gap <= LongestFeedStep) return true;
        }

        return inside < 3;
    }

    private static double[] Instants(ForecastSeries series, InstantQuantity quantity, NightGrid grid, int first, int last, double[] unknown)
    {
        if (!series.Instants.TryGetValue(quantity, out var points) || points.Length == 0) return unknown;
        var values = Filled(grid.Count);
        series.Along(quantity, grid.At(first), NightGrid.Step, values.AsSpan(first, last - first + 1));
        return values;
    }

    private static double[] Periods(
        ForecastSeries series, PeriodQuantity quantity, NightGrid grid, int first, int last, double[] unknown, double scale = 1)
    {
        if (!series.Periods.TryGetValue(quantity, out var points) || points.Length == 0) return unknown;
        var values = Filled(grid.Count);
        var read = values.AsSpan(first, last - first + 1);
        series.Along(quantity, grid.At(first), NightGrid.Step, read);
        foreach (ref var value in read) value *= scale;
        return values;
    }

    private static double[] Filled(int count)
    {
        var values = new double[count];
        Array.Fill(values, Unknown);
        return values;
    }
}

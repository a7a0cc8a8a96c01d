namespace NightWatch.Weather.OpenMeteo;

/// <summary>What the free hosts of Open-Meteo give to one address in a day, and what an answer takes of it.</summary>
/// <remarks>
/// Fewer than 10,000 calls a day: https://open-meteo.com/en/terms. An answer counts as several calls by its variables, members and days:
/// github.com/open-meteo/open-meteo, Sources/App/Helper/Vapor/RateLimiter.swift and the weights beside it. Others behind the same address
/// count too.
/// </remarks>
internal static class OpenMeteoBudget
{
    /// <summary>Calls a day, UTC.</summary>
    public const int CallsADay = 10_000;

    private const int Members = 51;

    /// <summary>Calls that one answer for one place counts as.</summary>
    /// <param name="series">Variables times members.</param>
    /// <param name="days">Days past and ahead.</param>
    public static double CallsOf(int series, int days) => Math.Max(1, Math.Max(series / 10.0, series / 10.0 * days / 14));

    /// <summary>Of the forecast as it is asked for here.</summary>
    public static double OfForecast(OpenMeteoOptions options) =>
        CallsOf(Columns(HourlyColumns.All), options.PastDays + options.ForecastDays);

    /// <summary>Of the ensemble as it is asked for here.</summary>
    public static double OfEnsemble(OpenMeteoOptions options) => CallsOf(Columns(HourlyColumns.Ensemble) * Members, options.ForecastDays);

    private static int Columns(string columns) => columns.Split(',').Length;
}

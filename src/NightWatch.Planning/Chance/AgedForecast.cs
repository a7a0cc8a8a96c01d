namespace NightWatch.Planning.Chance;

/// <summary>A run beside the newest: an earlier one of the same feed, or a member of the newest, which has the age 0.</summary>
/// <param name="Figures">What it says of the night; its gust and rain are not used.</param>
/// <param name="AgeHours">How much older than the newest it is, hours, 0 or more.</param>
public readonly record struct AgedForecast(ForecastFigures Figures, double AgeHours);

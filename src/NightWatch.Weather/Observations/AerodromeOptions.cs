namespace NightWatch.Weather.Observations;

/// <summary>How to reach the US Aviation Weather Center's data API and as whom.</summary>
public sealed record AerodromeOptions
{
    /// <summary>Mail address or web page of whoever runs this installation.</summary>
    public string? Contact { get; init; }

    /// <summary>Product and version in the User-Agent.</summary>
    public string Product { get; init; } = Http.Product.Token;

    /// <summary>The service; a setting so that a test can stand in.</summary>
    public Uri BaseUrl { get; init; } = new("https://aviationweather.gov/");
}

namespace NightWatch.Weather.Nws;

/// <summary>How to reach the US National Weather Service and as whom.</summary>
public sealed record NwsOptions
{
    /// <summary>Mail address or web page of whoever runs this installation; the service demands an identifying User-Agent.</summary>
    public string? Contact { get; init; }

    /// <summary>Product and version in the User-Agent.</summary>
    public string Product { get; init; } = Http.Product.Token;

    /// <summary>The service; a setting so that a test can stand in.</summary>
    public Uri BaseUrl { get; init; } = new("https://api.weather.gov/");
}

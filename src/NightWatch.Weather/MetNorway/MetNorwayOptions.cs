namespace NightWatch.Weather.MetNorway;

/// <summary>How to reach MET Norway and as whom.</summary>
public sealed record MetNorwayOptions
{
    /// <summary>
    /// Mail address or web page of whoever runs this installation. The terms of service demand it
    /// (https://docs.api.met.no/doc/TermsOfService.html): who hides is blocked, and with them every installation of the product.
    /// </summary>
    public string? Contact { get; init; }

    /// <summary>Product and version in the User-Agent.</summary>
    public string Product { get; init; } = Http.Product.Token;

    /// <summary>The service; a setting so that a test or a mirror can stand in.</summary>
    public Uri BaseUrl { get; init; } = new("https://api.met.no/");
}

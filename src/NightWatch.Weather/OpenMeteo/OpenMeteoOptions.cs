using NightWatch.Weather.Feeds;

namespace NightWatch.Weather.OpenMeteo;

/// <summary>How to reach Open-Meteo, what for, and what to ask.</summary>
/// <remarks>Terms: https://open-meteo.com/en/terms. The free hosts are for non-commercial use; the data are CC BY 4.0.</remarks>
public sealed record OpenMeteoOptions
{
    /// <summary>The free hosts, and with a key the customers' hosts, end like this.</summary>
    private const string Domain = "open-meteo.com";

    /// <summary>What the installation is for; null is not an answer.</summary>
    public Usage? Usage { get; init; }

    /// <summary>Key of a paid plan; null for the free hosts or an own instance.</summary>
    public string? ApiKey { get; init; }

    /// <summary>The forecast service; null: the free host, or the customers' with a key.</summary>
    public Uri? BaseUrl { get; init; }

    /// <summary>The ensemble service; null: the free host, or the customers' with a key.</summary>
    public Uri? EnsembleBaseUrl { get; init; }

    /// <summary>
    /// The ensemble to ask for, by its name in https://open-meteo.com/en/docs/ensemble-api; one, since answers of several cannot be told
    /// apart. 51 members, three-hourly, to fifteen days.
    /// </summary>
    public string EnsembleModel { get; init; } = "ecmwf_ifs025_ensemble";

    /// <summary>Past days, 0 to 92; three give the antecedent rain.</summary>
    public int PastDays { get; init; } = 3;

    /// <summary>Days ahead, 1 to 10: past the tenth day answers often end in nulls.</summary>
    public int ForecastDays { get; init; } = 7;

    /// <summary>Product and version in the User-Agent.</summary>
    public string Product { get; init; } = Http.Product.Token;

    /// <summary>Mail address or web page in the User-Agent; the service does not demand one.</summary>
    public string? Contact { get; init; }

    internal Uri Forecast => BaseUrl ?? new Uri(ApiKey is null ? "https://api.open-meteo.com/" : "https://customer-api.open-meteo.com/");

    internal Uri Ensemble =>
        EnsembleBaseUrl
        ?? new Uri(ApiKey is null ? "https://ensemble-api.open-meteo.com/" : "https://customer-ensemble-api.open-meteo.com/");

    internal string UserAgent => Contact is null ? Product : $"{Product} ({Http.UserAgent.CheckedContact(Contact, "Open-Meteo")})";

    /// <summary>The options, if the licence allows this use of that host.</summary>
    /// <exception cref="ArgumentException">It does not, or the use is not said; the sentence tells what to do.</exception>
    internal OpenMeteoOptions CheckedFor(Uri host)
    {
        if (Usage is null)
        {
            throw new ArgumentException(
                "Open-Meteo needs usage to be set to private or commercial: its free service is for non-commercial use only.");
        }

        var isTheirs = host.Host.Equals(Domain, StringComparison.OrdinalIgnoreCase)
            || host.Host.EndsWith("." + Domain, StringComparison.OrdinalIgnoreCase);
        if (Usage == Feeds.Usage.Commercial && isTheirs && string.IsNullOrWhiteSpace(ApiKey))
        {
            throw new ArgumentException(
                "Open-Meteo's free service is for non-commercial use only, and usage is commercial: use MET Norway, set the key of a paid "
                + "Open-Meteo plan, or set the address of an Open-Meteo instance of your own.");
        }

        if (PastDays is < 0 or > 92)
            throw new ArgumentException("Open-Meteo: past days must be 0 to 92.");
        if (ForecastDays is < 1 or > 10)
            throw new ArgumentException("Open-Meteo: forecast days must be 1 to 10.");
        return this;
    }
}

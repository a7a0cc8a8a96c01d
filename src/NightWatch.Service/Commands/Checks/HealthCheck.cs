using System.Net;
using System.Runtime.CompilerServices;
using NightWatch.Service.Measuring;
using NightWatch.Service.Settings;

namespace NightWatch.Service.Commands.Checks;

/// <summary>Asks the running service itself, as a container without a shell or an HTTP client must.</summary>
internal static class HealthCheck
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(5);

    public static async IAsyncEnumerable<Finding> FindingsAsync(AllSettings settings, [EnumeratorCancellation] CancellationToken stop)
    {
        yield return await AskAsync(settings.Service, stop);
    }

    private static async Task<Finding> AskAsync(ServiceOptions service, CancellationToken stop)
    {
        if (service.Faults().FirstOrDefault() is { } fault) return Finding.Fault("health", fault);
        if (service.Port == 0) return Finding.Fault("health", "Service:Port is 0 (any free one), so nobody knows where to ask.");
        // A service that listens on every address also listens on loopback.
        var address = IPAddress.Parse(service.Address);
        var host =
            address.Equals(IPAddress.Any) ? IPAddress.Loopback
            : address.Equals(IPAddress.IPv6Any) ? IPAddress.IPv6Loopback
            : address;
        using var http = new HttpClient { Timeout = Patience };
        try
        {
            using var answer = await http.GetAsync(new UriBuilder("http", host.ToString(), service.Port, "/health/ready").Uri, stop);
            var text = (await answer.Content.ReadAsStringAsync(stop)).Trim();
            if (!answer.IsSuccessStatusCode) return Finding.Fault("health", text + ".");
            return text == Health.Ready ? Finding.Ok("health", text + ".") : Finding.Warning("health", text + ".");
        }
        catch (Exception failure)
            when (failure is HttpRequestException || (failure is OperationCanceledException && !stop.IsCancellationRequested))
        {
            return Finding.Fault("health", $"the service does not answer at {host}, port {service.Port}.");
        }
    }
}

namespace NightWatch.Service.Commands.Checks;

/// <summary>What the letters' links lead to answers, seen from here.</summary>
internal static class PagesCheck
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(10);

    public static async Task<IReadOnlyList<Finding>> RunAsync(CheckBench bench, CancellationToken stop)
    {
        var address = bench.Settings.Service.PagesBase;
        if (address.Length == 0) return [Finding.Ok("pages", "Service:PagesBase is empty; letters carry no links.")];
        if (!Uri.TryCreate(address, UriKind.Absolute, out var uri))
            return [Finding.Fault("pages", "not tried, as its configuration is wrong.")];
        List<Finding> said = [];
        if (uri.Scheme != Uri.UriSchemeHttps && !uri.IsLoopback)
            said.Add(Finding.Warning("pages", $"{uri} is not https: links that act for a subscriber travel in the clear."));
        var listener = bench.Clocks.Listener();
        listener.InnerHandler = new SocketsHttpHandler { AllowAutoRedirect = false, ConnectTimeout = Patience };
        using var http = new HttpClient(listener) { Timeout = Patience };
        try
        {
            using var answer = await http.GetAsync(uri, HttpCompletionOption.ResponseHeadersRead, stop);
            said.Add((int)answer.StatusCode >= 500
                ? Finding.Warning("pages", $"{uri} answers {(int)answer.StatusCode}; does the service run behind the proxy?")
                : Finding.Ok("pages", $"{uri} answers {(int)answer.StatusCode}."));
        }
        catch (Exception failure)
            when (failure is HttpRequestException || (failure is OperationCanceledException && !stop.IsCancellationRequested))
        {
            // From inside a network the own public address may lead nowhere: a warning only.
            said.Add(
                Finding.Warning(
                    "pages",
                    $"{uri} cannot be reached from here: " +
                    $"{(failure is HttpRequestException ? failure.Message.TrimEnd('.') : "no answer in time")}. Try it from outside."));
        }

        return said;
    }
}

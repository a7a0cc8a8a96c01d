using System.Text.RegularExpressions;
using NightWatch.EndToEnd.Killing;
using NightWatch.EndToEnd.Programs;
using NightWatch.Planning.Watches.Reading;

namespace NightWatch.EndToEnd;

public sealed partial class RunCommandTests
{
    [Fact]
    public async Task The_service_gets_ready_answers_for_its_health_and_stops_when_told()
    {
        using var program = new Nightwatch();
        program.Write("watch.json", WatchFile.Example);
        Assert.Equal(0, (await program.RunAsync("watch", "add", "watch.json")).Exit);
        await using var service = ServiceProcess.Run(
            program.Folder,
            [new("Feeds:Order", "fake"), new("Feeds:Usage", "private"), new("Service:Port", "0"), new("Service:TickSeconds", "1")]);
        await KillBench.UntilAsync(() => Task.FromResult(Address().IsMatch(service.Log)), () => "It did not get ready:\n" + service.Log);
        using var http = new HttpClient { BaseAddress = new Uri(Address().Match(service.Log).Value) };

        Assert.Equal("alive\n", await http.GetStringAsync("/health/live", TestContext.Current.CancellationToken));
        await KillBench.UntilAsync(
            async () => (await http.GetAsync("/health/ready", TestContext.Current.CancellationToken)).IsSuccessStatusCode,
            () => "It did not say that it is ready:\n" + service.Log);
        var metrics = await http.GetStringAsync("/metrics", TestContext.Current.CancellationToken);
        string[] told =
        [
            "nightwatch_stage_duration_seconds_bucket", "nightwatch_outbox_depth", "nightwatch_due_open", "nightwatch_rows_unreadable",
            "nightwatch_tick_age_seconds", "dotnet_process_memory_working_set_bytes",
        ];
        foreach (var name in told)
            Assert.Contains(name, metrics, StringComparison.Ordinal);
        // No feed was asked and no look failed: counted from the start all the same, or the first one would be no increase.
        foreach (
            var series in (string[])
                [
                    "nightwatch_feed_answer_total{.*nightwatch_feed=\"fake\".*nightwatch_outcome=\"refused\".*}",
                    "nightwatch_pass_failure_total{.*nightwatch_pass=\"evening\".*}",
                ])
            Assert.Matches($"(?m)^{series} 0( |$)", metrics);
        using var proxied = new HttpRequestMessage(HttpMethod.Get, "/metrics") { Headers = { { "X-Forwarded-For", "192.0.2.1" } } };
        Assert.Equal(System.Net.HttpStatusCode.NotFound, (await http.SendAsync(proxied, TestContext.Current.CancellationToken)).StatusCode);
        Assert.Contains("1 watches", service.Log, StringComparison.Ordinal);
        Assert.Equal(0, await service.StopAsync());
        Assert.Contains("nothing is in hand", service.Log, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Metrics_and_traces_reach_a_collector_and_the_last_of_them_before_the_end()
    {
        await using var collector = await Collector.StartAsync();
        await using var bench = new KillBench();
        await bench.OneEveningPassIsDueAsync();
        await using var service = bench.Run(("Service:OtlpEndpoint", collector.Url), ("Service:TraceShare", "1"));

        await KillBench.UntilAsync(() => Task.FromResult(service.Log.Contains("1 sent", StringComparison.Ordinal)), () => service.Log);
        Assert.Equal(0, await service.StopAsync());

        foreach (
            var metric in (string[])
                ["nightwatch.stage.duration", "nightwatch.feed.fetch.duration", "nightwatch.letter.outcome", "nightwatch.outbox.depth"])
            Assert.Contains(metric, collector.Of("MetricsService"), StringComparison.Ordinal);
        foreach (var span in (string[])["tick", "subscriber", "plan", "commit", "send"])
            Assert.Contains(span, collector.Of("TraceService"), StringComparison.Ordinal);
        foreach (var secret in (string[])["moraa", "any-night", "lake-shore", "34.1"])
            Assert.DoesNotContain(
                secret, collector.Of("MetricsService") + collector.Of("TraceService"), StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task A_second_service_on_the_same_file_refuses_to_start()
    {
        using var program = new Nightwatch();
        program.Write("appsettings.json", """{ "Feeds": { "Order": "fake", "Usage": "private" }, "Service": { "Port": 0 } }""");
        await using var first = ServiceProcess.Run(program.Folder, []);
        await KillBench.UntilAsync(() => Task.FromResult(Address().IsMatch(first.Log)), () => "It did not get ready:\n" + first.Log);

        var second = await program.RunAsync("run");

        Assert.Equal(1, second.Exit);
        Assert.Contains("in use by another nightwatch service", second.Error, StringComparison.Ordinal);
        Assert.Equal(0, await first.StopAsync());
    }

    [GeneratedRegex(@"http://127\.0\.0\.1:\d+")]
    private static partial Regex Address();
}

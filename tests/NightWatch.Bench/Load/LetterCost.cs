using System.Diagnostics;
using System.Globalization;
using MimeKit;
using NightWatch.Bench.Planning;
using NightWatch.Letters;
using NightWatch.Letters.Drafts;
using NightWatch.Letters.Layout;
using NightWatch.Letters.Links;
using NightWatch.Letters.Policy;
using NightWatch.Letters.Views;
using NightWatch.Pictures;
using NightWatch.Planning.Nights;
using NightWatch.Planning.Verdicts;
using NightWatch.Store.Outbox;
using NightWatch.Weather.Known;
using NodaTime;

namespace NightWatch.Bench.Load;

/// <summary>What one outlook costs, by its parts, on one core.</summary>
internal static class LetterCost
{
    private const int Letters = 60;

    public static async Task<int> RunAsync()
    {
        var head = new LetterHead(new MailboxAddress("NightWatch", "watch@nightwatch.example.org"), "nightwatch.example.org");
        var drafts = Drafts().Take(Letters).ToList();
        using var writer = new LetterWriter(head);
        using var layout = new HtmlLetter();
        var views = drafts.Select(draft => LetterViews.Of(draft, head)).ToList();
        var sources = views.Select(view => view.Nights.Select(_ => "cid:x").ToArray()).ToList();
        await PartAsync("view", i => Task.FromResult(LetterViews.Of(drafts[i], head)));
        await PartAsync("night chart", i => Task.FromResult(NightChart.Png(drafts[i].Orders[0].Plan)));
        await PartAsync("frame chart", i => Task.FromResult(FrameChart.Png(drafts[i].Orders[0].Plan)));
        await PartAsync("html, styles inlined", i => layout.OfAsync(views[i], sources[i], sources[i]));
        await PartAsync("text", i => Task.FromResult(TextLetter.Of(views[i])));
        await PartAsync("the whole letter", i => writer.WriteAsync(drafts[i]));
        await PartAsync("and frozen for the queue", async i => OutboxDraft.Of(await writer.WriteAsync(drafts[i]), [], drafts[i].Now));
        Console.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"night chart {drafts.Average(draft => NightChart.Png(draft.Orders[0].Plan).Length) / 1000:F1} kB, frame chart " +
                $"{drafts.Average(draft => FrameChart.Png(draft.Orders[0].Plan)?.Length ?? 0) / 1000:F1} kB"));
        return 0;

        async Task PartAsync<T>(string name, Func<int, Task<T>> part)
        {
            for (var i = 0; i < 5; i++) await part(i);
            var cpu = Process.GetCurrentProcess().TotalProcessorTime;
            for (var i = 0; i < drafts.Count; i++) await part(i);
            Console.WriteLine(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{name,-26} {(Process.GetCurrentProcess().TotalProcessorTime - cpu).TotalMilliseconds / drafts.Count,8:F2} ms of " +
                    $"processor time"));
        }
    }

    private static IEnumerable<LetterDraft> Drafts() =>
        from bench in BenchWatches.Make(1000)
        let inputs = new NightInputs
        {
            Watch = bench.Watch,
            Night = BenchWatches.First,
            Now = BenchWatches.Now,
            Weather = new PlaceWeather { Newest = bench.Forecast },
            Glow = bench.Glow,
        }
        let plan = NightPlanner.Plan(inputs)
        where plan.Sequence is not null
        select new LetterDraft
        {
            Orders =
            [
                new LetterOrder(
                    LetterKind.Outlook,
                    plan,
                    new ToldNight { WatchId = bench.Watch.Id, Night = plan.Night },
                    BenchWatches.Now + Duration.FromDays(1),
                    "bench"),
            ],
            Now = BenchWatches.Now,
        };
}

using NightWatch.Delivery.Links;
using NightWatch.Letters.Links;
using NightWatch.Pages.Address;
using NightWatch.Pages.Layout;
using NightWatch.Pages.Links;
using NightWatch.Planning.Chance;
using NightWatch.Store.Chances;
using NightWatch.Watchkeeping.Records;
using NightWatch.Words;
using NodaTime;

namespace NightWatch.Pages.Records;

/// <summary>How a watch's forecasts have held: a page, and the same as a table. The link's signature is the right to read.</summary>
internal static class RecordRoutes
{
    /// <summary>The page looks back as far as verdicts are usually kept.</summary>
    private const int MostDays = 800;

    public static void MapRecords(this IEndpointRouteBuilder pages)
    {
        pages.MapGet("/watches/{watchId}/record", ShowAsync);
        pages.MapGet("/watches/{watchId}/record.csv", ExportAsync);
    }

    private static async Task<IResult> ShowAsync(
        string watchId,
        string? k,
        LinkGate gate,
        RecordReader reader,
        LearntChanceStore chances,
        PageRoot root,
        StoredLinkSigner signer,
        IClock clock,
        HttpContext context,
        CancellationToken stop)
    {
        if (await gate.WatchAsync(watchId, k, stop) is not { } watch) return PageResult.NothingHere();
        context.Response.Headers.CacheControl = "private, no-cache";
        var record = (await reader.ReadAsync(watch.Id, clock.GetCurrentInstant().InUtc().Date.PlusDays(-MostDays), null, stop)).ForReaderOf(
            watch);
        var feeds = record.Nights.SelectMany(night => night.Marks).Select(mark => mark.FeedId).ToHashSet();
        var language = Speech.To(watch).Language;
        var learnt = (await chances.NewestAsync(ChancePrior.Shipped, stop)).Where(one => feeds.Contains(one.For.FeedId))
            .Select(one => language.Learnt(one.For.FeedId, one.For.Lead, language.Of(one, watch.Site.Id)));
        var csv = root.To($"watches/{Uri.EscapeDataString(watch.Id)}/record.csv?k={LetterLinks.WatchKey(signer, watch)}");
        return PageResult.Of<RecordPage>(RecordPageModel.Of(watch, record, [.. learnt], csv));
    }

    private static async Task<IResult> ExportAsync(
        string watchId, string? k, LinkGate gate, RecordReader reader, HttpContext context, CancellationToken stop)
    {
        if (await gate.WatchAsync(watchId, k, stop) is not { } watch) return PageResult.NothingHere();
        context.Response.Headers.CacheControl = "private, no-store";
        return Results.File(
            VerdictTable.Csv(await reader.ReadAsync(watch.Id, null, null, stop)), "text/csv; charset=utf-8", $"{watch.Id}-record.csv");
    }
}

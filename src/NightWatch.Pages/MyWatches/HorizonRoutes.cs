using NightWatch.Pages.Layout;
using NightWatch.Pages.Subscribers;
using NightWatch.Planning.Watches;
using NightWatch.Sky.Places;
using NightWatch.Store.Watches;
using NodaTime;

namespace NightWatch.Pages.MyWatches;

/// <summary>The skyline of a watch's site: by points, or from a file.</summary>
internal static class HorizonRoutes
{
    private const int MostPoints = 720;

    public static void Map(RouteGroupBuilder own)
    {
        own.MapGet("/watches/{id}/horizon", ShowAsync);
        own.MapPost("/watches/{id}/horizon", KeepAsync);
        own.MapPost("/watches/{id}/horizon-file", TakeFileAsync);
    }

    private static async Task<IResult> ShowAsync(string id, HttpContext http, MyWatchesHandler handler, CancellationToken stop) =>
        await handler.OwnAsync(SignedInOnly.Who(http), id, stop) is { } watch
            ? Show(HorizonModel.Of(watch.Id, watch.Site.Name, watch.Site.Horizon))
            : PageResult.NothingHere();

    private static async Task<IResult> KeepAsync(
        string id, HttpContext http, MyWatchesHandler handler, WatchStore watches, IClock clock, CancellationToken stop)
    {
        if (await handler.OwnAsync(SignedInOnly.Who(http), id, stop) is not { } watch) return PageResult.NothingHere();
        var form = await http.Request.ReadFormAsync(stop);
        (string Azimuth, string Altitude)[] rows =
        [
            .. form["azimuth"].Zip(form["altitude"], (azimuth, altitude) => ((azimuth ?? "").Trim(), (altitude ?? "").Trim())),
        ];
        // Each filled row is a line as a file has it, so that both are read by the same rules.
        var lines = rows.Select(row =>
            row is ("", "")
                ? ""
                : $"{row.Azimuth.Replace(',', '.').Replace('\u2212', '-')};{row.Altitude.Replace(',', '.').Replace('\u2212', '-')}");
        return await StoreAsync(http, watch, string.Join('\n', lines), rows, watches, clock, stop);
    }

    private static async Task<IResult> TakeFileAsync(
        string id, HttpContext http, MyWatchesHandler handler, WatchStore watches, IClock clock, CancellationToken stop)
    {
        if (await handler.OwnAsync(SignedInOnly.Who(http), id, stop) is not { } watch) return PageResult.NothingHere();
        var form = await http.Request.ReadFormAsync(stop);
        var asIs = HorizonModel.Of(watch.Id, watch.Site.Name, watch.Site.Horizon);
        if (form.Files.GetFile("file") is not { Length: > 0 } file)
            return Show(asIs with { Fault = "No file was sent; accepted: a text file with a line a point." });
        using var reader = new StreamReader(file.OpenReadStream());
        return await StoreAsync(http, watch, await reader.ReadToEndAsync(stop), asIs.Rows, watches, clock, stop);
    }

    private static async Task<IResult> StoreAsync(
        HttpContext http,
        Watch watch,
        string text,
        IReadOnlyList<(string Azimuth, string Altitude)> rows,
        WatchStore watches,
        IClock clock,
        CancellationToken stop)
    {
        try
        {
            var horizon = HorizonCsv.Read(new StringReader(text));
            if (horizon.Points.Count > MostPoints)
                throw new FormatException($"The horizon has {horizon.Points.Count} points; accepted: up to {MostPoints}.");
            await watches.PutAsync(watch with { Site = watch.Site with { Horizon = horizon } }, clock.GetCurrentInstant(), stop);
            return http.SeeOther("watches?done=kept");
        }
        catch (FormatException fault)
        {
            return Show(
                new HorizonModel(watch.Id, watch.Site.Name, rows, fault.Message.Replace("Horizon line", "Point", StringComparison.Ordinal))
            );
        }
    }

    private static IResult Show(HorizonModel model) =>
        PageResult.Of<HorizonPage>(model, model.Fault is null ? StatusCodes.Status200OK : StatusCodes.Status400BadRequest);
}

using Microsoft.AspNetCore.Mvc;
using NightWatch.Pages.Layout;

namespace NightWatch.Pages.Subscribers;

/// <summary>In by a mailed link, out by a button.</summary>
internal static class SignInRoutes
{
    public static void Map(RouteGroupBuilder pages)
    {
        pages.MapGet("/sign-in", () => PageResult.Of<SignInPage>(new SignInModel("", null)));
        pages.MapPost("/sign-in", AskAsync);
        pages.MapGet("/enter", ShowAsync);
        pages.MapPost("/enter", EnterAsync);
        pages.MapPost("/sign-out", LeaveAsync);
    }

    /// <summary>What a network that causes too many letters is told.</summary>
    public static IResult TooMany() =>
        PageResult.Says(
            "Too many requests from your network",
            StatusCodes.Status429TooManyRequests,
            "So that nobody's mailbox is flooded, a network may ask for a few letters an hour. Try again later.");

    private static async Task<IResult> AskAsync(HttpContext http, SignInHandler handler, CancellationToken stop)
    {
        var address = (await http.Request.ReadFormAsync(stop))["address"].ToString().Trim();
        if (!MailAddresses.IsOne(address))
            return PageResult.Of<SignInPage>(new SignInModel(address, MailAddresses.Accepted), StatusCodes.Status400BadRequest);
        return await handler.AskAsync(address, http.Connection.RemoteIpAddress, stop)
            ? PageResult.Says(
                "Now look into your mailbox",
                StatusCodes.Status200OK,
                "If that address has a watch here, a letter with a link is on its way to it. The link works for a quarter of an hour, " +
                "once.",
                "If none comes within ten minutes, look into the junk folder, or check the address.")
            : TooMany();
    }

    private static async Task<IResult> ShowAsync([FromQuery] string? t, SignInHandler handler, CancellationToken stop) =>
        await handler.IsGoodAsync(t, stop)
            ? PageResult.Of<EnterPage>(new Dictionary<string, object?> { [nameof(EnterPage.Token)] = t })
            : PageResult.NothingHere();

    private static async Task<IResult> EnterAsync(HttpContext http, SignInHandler handler, Sessions sessions, CancellationToken stop)
    {
        if (await handler.EnterAsync((await http.Request.ReadFormAsync(stop))["t"].ToString(), stop) is not { } address)
            return PageResult.NothingHere();
        await sessions.BeginAsync(http, address, stop);
        return http.SeeOther("watches");
    }

    private static async Task<IResult> LeaveAsync(HttpContext http, Sessions sessions, CancellationToken stop)
    {
        await sessions.EndAsync(http, stop);
        return http.SeeOther("");
    }
}

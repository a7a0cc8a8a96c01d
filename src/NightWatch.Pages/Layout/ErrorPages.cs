using Microsoft.AspNetCore.Antiforgery;
using Microsoft.AspNetCore.Diagnostics;

namespace NightWatch.Pages.Layout;

/// <summary>Plain pages for what goes wrong; none says more than the reader can use.</summary>
internal static class ErrorPages
{
    /// <summary>An answer without a body.</summary>
    public static Task EmptyAsync(HttpContext context) =>
        context.Response.StatusCode switch
        {
            StatusCodes.Status404NotFound => SayAsync(context, "There is no such page", "The address is mistyped or out of date."),
            StatusCodes.Status405MethodNotAllowed => SayAsync(
                context, "That cannot be done here", "The page is for reading, or only for sending a form."),
            StatusCodes.Status413PayloadTooLarge => SayAsync(context, "That is too large", "A form with its file may have 256 KB."),
            >= 500 => SayAsync(
                context, "That went wrong", "The service could not answer. Nothing was changed by half; try again in a minute."),
            >= 400 => SayAsync(context, "That could not be read", "The request is incomplete or malformed. Go back and send it once more."),
            _ => Task.CompletedTask,
        };

    /// <summary>An exception, which the log has.</summary>
    public static Task FailedAsync(HttpContext context)
    {
        // A form that breaks off or breaks a limit is its sender's doing; whoever was reading it may have wrapped the fact.
        var failures = Chain(context.Features.Get<IExceptionHandlerFeature>()?.Error).ToArray();
        context.Response.StatusCode = failures.OfType<BadHttpRequestException>().FirstOrDefault() is { } bad ? bad.StatusCode
            : failures.Any(failure => failure is InvalidDataException or AntiforgeryValidationException) ? StatusCodes.Status400BadRequest
            : StatusCodes.Status500InternalServerError;
        return EmptyAsync(context);
    }

    private static IEnumerable<Exception> Chain(Exception? failure)
    {
        for (var at = failure; at is not null; at = at.InnerException) yield return at;
    }

    private static Task SayAsync(HttpContext context, string title, string sentence) =>
        PageResult.Says(title, context.Response.StatusCode, sentence).ExecuteAsync(context);
}

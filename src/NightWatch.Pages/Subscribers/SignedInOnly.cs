using NightWatch.Pages.Layout;

namespace NightWatch.Pages.Subscribers;

/// <summary>Lets nobody by who is not signed in, and tells the handlers who is.</summary>
internal sealed class SignedInOnly(Sessions sessions) : IEndpointFilter
{
    private static readonly object Key = new();

    /// <summary>The address of the reader, behind this filter.</summary>
    public static string Who(HttpContext http) => (string)http.Items[Key]!;

    public async ValueTask<object?> InvokeAsync(EndpointFilterInvocationContext context, EndpointFilterDelegate next)
    {
        var http = context.HttpContext;
        if (await sessions.WhoAsync(http, http.RequestAborted) is not { } address) return http.SeeOther("sign-in");
        http.Items[Key] = address;
        if (HttpMethods.IsPost(http.Request.Method)) await sessions.ProlongAsync(http, http.RequestAborted);
        return await next(context);
    }
}

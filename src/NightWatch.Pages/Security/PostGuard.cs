using Microsoft.AspNetCore.Antiforgery;
using NightWatch.Pages.Address;

namespace NightWatch.Pages.Security;

/// <summary>
/// The signature in the request is the right to act, so that no cookie is needed; where a browser has our cookie, the token must fit it.
/// </summary>
internal sealed class SignedByLink;

/// <summary>Called by mail programs, which have neither cookie nor token (RFC 8058): the signature alone.</summary>
internal sealed class OneClick;

/// <summary>Refuses every POST that does not come from a form of ours.</summary>
internal sealed class PostGuard(IAntiforgery antiforgery) : IEndpointFilter
{
    public async ValueTask<object?> InvokeAsync(EndpointFilterInvocationContext context, EndpointFilterDelegate next)
    {
        var http = context.HttpContext;
        if (!HttpMethods.IsPost(http.Request.Method) || IsFree(http)) return await next(context);
        if (await antiforgery.IsRequestValidAsync(http)) return await next(context);
        return Layout.PageResult.Says(
            "This form is out of date",
            StatusCodes.Status400BadRequest,
            "It was opened too long ago, or the browser keeps no cookies for this site. Nothing was changed.",
            "Go back, load the page again and send it once more.");
    }

    private static bool IsFree(HttpContext http)
    {
        var endpoint = http.GetEndpoint()?.Metadata;
        if (endpoint?.GetMetadata<OneClick>() is not null) return true;
        return endpoint?.GetMetadata<SignedByLink>() is not null
            && !http.Request.Cookies.ContainsKey(Cookies.Antiforgery(http.RequestServices.GetRequiredService<PageRoot>()));
    }
}

using NightWatch.Pages.Address;

namespace NightWatch.Pages.Layout;

/// <summary>After a form: the browser is sent on by GET, so that loading again sends nothing twice.</summary>
internal static class Redirects
{
    /// <param name="http">The request.</param>
    /// <param name="path">Within the pages, without a leading slash; never from the request.</param>
    public static IResult SeeOther(this HttpContext http, string path)
    {
        http.Response.Headers.Location = http.RequestServices.GetRequiredService<PageRoot>().To(path);
        return Results.StatusCode(StatusCodes.Status303SeeOther);
    }
}

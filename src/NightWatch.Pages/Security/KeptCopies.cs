namespace NightWatch.Pages.Security;

/// <summary>The copies of nights that a browser keeps for the field.</summary>
internal static class KeptCopies
{
    /// <summary>
    /// Has the browser forget them, with the worker that serves them and what it remembers (Clear Site Data, W3C; heard over TLS and on
    /// this machine).
    /// </summary>
    public static void ForgetHere(this HttpContext http) => http.Response.Headers["Clear-Site-Data"] = "\"cache\", \"storage\"";
}

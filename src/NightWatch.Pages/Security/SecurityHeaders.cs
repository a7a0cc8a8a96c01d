using NightWatch.Pages.Address;

namespace NightWatch.Pages.Security;

/// <summary>What every answer says to browsers about how it may be used.</summary>
internal static class SecurityHeaders
{
    // Links are secrets, so no address leaves the page (no-referrer) and no page is stored or indexed; nothing but our own files runs,
    // shows or is asked, and no page of another host may frame ours.
    private static readonly (string Name, string Value)[] Always =
    [
        ("Content-Security-Policy",
            "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; font-src 'self'; connect-src 'self'; manifest-src " +
            "'self'; worker-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'"),
        ("X-Content-Type-Options", "nosniff"),
        ("X-Frame-Options", "DENY"),
        ("Referrer-Policy", "no-referrer"),
        ("Cross-Origin-Opener-Policy", "same-origin"),
        ("Cross-Origin-Resource-Policy", "same-origin"),
        ("Permissions-Policy", "accelerometer=(), camera=(), geolocation=(self), gyroscope=(), microphone=(), payment=(), usb=()"),
        ("X-Robots-Tag", "noindex, nofollow"),
    ];

    /// <summary>A year, RFC 6797.</summary>
    private const string TransportSecurity = "max-age=31536000";

    /// <summary>Adds them as the answer starts, so that an error page has them too.</summary>
    public static IApplicationBuilder UseSecurityHeaders(this IApplicationBuilder app, PageRoot root) => app.Use((context, next) =>
    {
        context.Response.OnStarting(() =>
        {
            var headers = context.Response.Headers;
            foreach (var (name, value) in Always) headers.TryAdd(name, value);
            if (root.IsSecure) headers.StrictTransportSecurity = TransportSecurity;
            headers.Remove("blazor-enhanced-nav"); // of no use without that script
            // Antiforgery says "no-cache, no-store" itself.
            if (headers.CacheControl.Count == 0) headers.CacheControl = "no-store";
            return Task.CompletedTask;
        });
        return next(context);
    });
}

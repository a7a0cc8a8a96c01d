using NightWatch.Pages.Address;

namespace NightWatch.Pages.Security;

/// <summary>The two cookies there are; both are needed for what the reader asks for, none tells who reads what.</summary>
internal static class Cookies
{
    /// <summary>Guards forms.</summary>
    public static string Antiforgery(PageRoot root) => Name(root, "form");

    /// <summary>Who is signed in.</summary>
    public static string Session(PageRoot root) => Name(root, "session");

    /// <summary>Not readable by scripts, not sent along by other hosts' forms, over TLS alone where the pages are.</summary>
    public static CookieBuilder Builder(PageRoot root, string name) => new()
    {
        Name = name,
        HttpOnly = true,
        IsEssential = true,
        Path = "/",
        SameSite = SameSiteMode.Lax,
        SecurePolicy = root.IsSecure ? CookieSecurePolicy.Always : CookieSecurePolicy.SameAsRequest,
    };

    // The prefix makes browsers refuse a cookie of that name set by another host of the domain (RFC 6265bis, 4.1.3.2).
    private static string Name(PageRoot root, string name) => root.IsSecure ? $"__Host-nw-{name}" : $"nw-{name}";
}

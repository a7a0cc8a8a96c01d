using NightWatch.Pages.Address;
using NightWatch.Pages.Security;
using NightWatch.Planning.Watches;
using NightWatch.Store.Subscribers;
using NodaTime;

namespace NightWatch.Pages.Subscribers;

/// <summary>Who is signed in, by a cookie whose hash is a row: a month from the last use on, and gone at once when the row goes.</summary>
internal sealed class Sessions(SessionStore store, PageRoot root, IClock clock)
{
    private static readonly Duration Lasts = Duration.FromDays(30);

    // Prolonged once a day, not at every request.
    private static readonly Duration Slack = Duration.FromDays(1);

    /// <summary>The address of the reader; null: not signed in. Asking changes nothing.</summary>
    public async Task<string?> WhoAsync(HttpContext http, CancellationToken stop) =>
        Token(http) is { } token ? (await store.FindAsync(Tokens.HashOf(token), clock.GetCurrentInstant(), stop))?.Address : null;

    /// <summary>Moves the end of the session on, where it is due; for requests that change something anyway.</summary>
    public async Task ProlongAsync(HttpContext http, CancellationToken stop)
    {
        if (Token(http) is not { } token) return;
        var now = clock.GetCurrentInstant();
        var hash = Tokens.HashOf(token);
        if (await store.FindAsync(hash, now, stop) is not { } session || session.ExpiresAt - now > Lasts - Slack) return;
        await store.ProlongAsync(hash, now + Lasts, stop);
        Set(http, token);
    }

    /// <summary>Signs the reader in.</summary>
    public async Task BeginAsync(HttpContext http, string address, CancellationToken stop)
    {
        var token = Tokens.Make();
        var now = clock.GetCurrentInstant();
        // The browser's session before, if any, ends: signing in always gives a fresh one.
        if (Token(http) is { } before) await store.EndAsync(Tokens.HashOf(before), stop);
        await store.BeginAsync(Tokens.HashOf(token), Subscriber.KeyOf(address), now, now + Lasts, stop);
        Set(http, token);
    }

    /// <summary>Signs the reader out.</summary>
    public async Task EndAsync(HttpContext http, CancellationToken stop)
    {
        if (Token(http) is { } token) await store.EndAsync(Tokens.HashOf(token), stop);
        http.Response.Cookies.Delete(Cookies.Session(root), Cookies.Builder(root, Cookies.Session(root)).Build(http));
    }

    private string? Token(HttpContext http) => http.Request.Cookies[Cookies.Session(root)] is { Length: > 0 } token ? token : null;

    private void Set(HttpContext http, string token)
    {
        var builder = Cookies.Builder(root, Cookies.Session(root));
        builder.MaxAge = Lasts.ToTimeSpan();
        http.Response.Cookies.Append(Cookies.Session(root), token, builder.Build(http));
    }
}

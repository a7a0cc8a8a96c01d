using Microsoft.Playwright;

namespace NightWatch.EndToEnd.Browsing;

/// <summary>Debian's Chromium without a window, one for a class of tests; each test has a profile of its own in it.</summary>
public sealed class Browser : IAsyncLifetime
{
    private const string Chromium = "/usr/bin/chromium";

    private IPlaywright? driver;
    private IBrowser? browser;

    public async ValueTask InitializeAsync()
    {
        if (!File.Exists(Chromium)) return;
        driver = await Playwright.CreateAsync();
        browser = await driver.Chromium.LaunchAsync(
            new()
            {
                ExecutablePath = Chromium,
                Args =
                [
                    "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
                    "--disable-component-update", "--disable-sync",
                ],
            });
    }

    public async ValueTask DisposeAsync()
    {
        if (browser is not null) await browser.DisposeAsync();
        driver?.Dispose();
    }

    /// <summary>A tab in a profile of its own. What the page complains of and whom it asks is noted on it.</summary>
    /// <param name="width">Pixels; below 600 the height is a phone's.</param>
    /// <param name="scheme">What the reader's system prefers.</param>
    /// <param name="scripts">Whether scripts run.</param>
    /// <param name="touch">Whether it is a phone's screen, that fingers touch.</param>
    public async Task<Tab> OpenAsync(int width = 1200, ColorScheme scheme = ColorScheme.Light, bool scripts = true, bool touch = false)
    {
        Assert.SkipUnless(browser is not null, $"No {Chromium} here; .ci/run installs it.");
        var profile = await browser!.NewContextAsync(new()
        {
            ViewportSize = new() { Width = width, Height = width < 600 ? 844 : 900 },
            ColorScheme = scheme,
            JavaScriptEnabled = scripts,
            HasTouch = touch,
            IsMobile = touch,
        });
        return new Tab(profile, await profile.NewPageAsync());
    }
}

/// <summary>One tab with its profile.</summary>
public sealed class Tab : IAsyncDisposable
{
    private readonly List<string> complaints = [];
    private readonly HashSet<string> hosts = [];

    internal Tab(IBrowserContext profile, IPage page)
    {
        (Profile, Page) = (profile, page);
        page.Console += (_, said) =>
        {
            if (said.Type is "error" or "warning") complaints.Add(said.Text);
        };
        page.PageError += (_, error) => complaints.Add(error);
        page.Request += (_, request) => hosts.Add(new Uri(request.Url).Host);
    }

    /// <summary>Cookies, storage and worker of this tab alone.</summary>
    public IBrowserContext Profile { get; }

    /// <summary>What it shows.</summary>
    public IPage Page { get; }

    /// <summary>Errors and warnings of the page, refusals by its policy among them.</summary>
    public IReadOnlyList<string> Complaints => complaints;

    /// <summary>Whom it asked.</summary>
    public IReadOnlyCollection<string> Hosts => hosts;

    /// <summary>Opens an address and waits until nothing more is asked.</summary>
    public Task<IResponse?> GoAsync(Uri? to) => Page.GotoAsync(to!.ToString(), new() { WaitUntil = WaitUntilState.NetworkIdle });

    /// <summary>Opens an address and waits until it has loaded; what its scripts ask for afterwards may be on its way.</summary>
    public Task<IResponse?> LoadAsync(Uri? to) => Page.GotoAsync(to!.ToString(), new() { WaitUntil = WaitUntilState.Load });

    public ValueTask DisposeAsync() => Profile.DisposeAsync();
}

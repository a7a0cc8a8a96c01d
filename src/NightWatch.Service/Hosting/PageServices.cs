using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.DataProtection.KeyManagement;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.Extensions.Options;
using NightWatch.Pages.Address;
using NightWatch.Pages.Assets;
using NightWatch.Pages.Layout;
using NightWatch.Pages.Links;
using NightWatch.Pages.MyWatches;
using NightWatch.Pages.Nights;
using NightWatch.Pages.Operator;
using NightWatch.Pages.Records;
using NightWatch.Pages.Seasons;
using NightWatch.Pages.Security;
using NightWatch.Pages.SignUp;
using NightWatch.Pages.Status;
using NightWatch.Pages.Subscribers;
using NightWatch.Pages.Unsubscribing;
using NightWatch.Service.Measuring;
using NightWatch.Service.Settings;
using NightWatch.Store.Subscribers;

namespace NightWatch.Service.Hosting;

/// <summary>The pages put together: what they need, what every request passes through, and their routes.</summary>
internal static class PageServices
{
    private const int MostFormBytes = 256 * 1024;

    private const int MostFields = 500;

    /// <summary>Registers what the pages need beside the service's own parts.</summary>
    public static void AddPages(this WebApplicationBuilder builder, AllSettings settings)
    {
        var root = new PageRoot(settings.Service.PagesBase.Length > 0 ? new Uri(settings.Service.PagesBase) : null);
        builder.WebHost.ConfigureKestrel(kestrel =>
        {
            kestrel.AddServerHeader = false;
            kestrel.Limits.MaxRequestBodySize = MostFormBytes;
            kestrel.Limits.RequestHeadersTimeout = TimeSpan.FromSeconds(15);
        });
        var services = builder.Services;
        services
            .AddSingleton(root)
            .AddSingleton(new PageOptions(settings.Service.OpenSignUp, settings.Service.OperatorKeyFile))
            .AddSingleton<PageAssets>()
            .AddSingleton<LinkGate>()
            .AddSingleton<PageAddress>();
        services.AddSingleton<TicketStore>().AddSingleton<SessionStore>().AddSingleton<SubscriberStore>();
        services.AddNightPages().AddStatus();
        services
            .AddSingleton<Sessions>()
            .AddSingleton<MailRations>()
            .AddSingleton<SignUpHandler>()
            .AddSingleton<SignInHandler>()
            .AddSingleton<MyWatchesHandler>()
            .AddSingleton<DataExport>();
        services.AddSingleton<OperatorHandler>();
        services.AddSingleton<PostGuard>().AddSingleton<SignedInOnly>().AddSingleton<OperatorGate>();
        services.AddRazorComponents();
        services.AddSingleton<KeyRing>().AddDataProtection().SetApplicationName("NightWatch");
        services.AddSingleton<IConfigureOptions<KeyManagementOptions>>(parts => new ConfigureOptions<KeyManagementOptions>(keys =>
            keys.XmlRepository = parts.GetRequiredService<KeyRing>()));
        services.AddAntiforgery(forms =>
        {
            forms.Cookie = Cookies.Builder(root, Cookies.Antiforgery(root));
            // Set once by SecurityHeaders, for every page.
            forms.SuppressXFrameOptionsHeader = true;
        });
        services.Configure<FormOptions>(forms =>
        {
            forms.ValueCountLimit = MostFields;
            forms.KeyLengthLimit = 100;
            forms.ValueLengthLimit = 64 * 1024;
            forms.MultipartBodyLengthLimit = MostFormBytes;
        });
        // The keys are read when the first form needs them; the framework would read them at every start.
        foreach (
            var reader in services
                .Where(part =>
                    part.ServiceType == typeof(IHostedService) && part.ImplementationType?.Assembly == typeof(KeyManagementOptions).Assembly
                )
                .ToList())
            services.Remove(reader);
    }

    /// <summary>What every request passes through, and where it ends.</summary>
    public static void MapPages(this WebApplication app, ServiceOptions options)
    {
        var root = app.Services.GetRequiredService<PageRoot>();
        app.UseForwarding(Forwarding.Parse(options.TrustedProxies) ?? []);
        // Where readers come over TLS, a proxy took it off; cookies and links must be made for what the reader sees.
        if (root.IsSecure)
        {
            app.Use((context, next) =>
            {
                context.Request.Scheme = Uri.UriSchemeHttps;
                return next(context);
            });
        }

        if (root.Prefix.Length > 0) app.UsePathBase(root.Prefix);
        app.UseSecurityHeaders(root);
        app.UseHealth();
        app.UseMiddleware<RequestLog>();
        app.UseExceptionHandler(failed => failed.Run(ErrorPages.FailedAsync));
        app.UseStatusCodePages(context => ErrorPages.EmptyAsync(context.HttpContext));
        if (root.Base is null) app.Use(OnlyHereAsync);
        app.Use(ReadHeadAsync);
        app.UseRouting();

        app.Services.GetRequiredService<PageAssets>().Map(app);
        var pages = app.MapGroup("").Behind<PostGuard>();
        SignUpRoutes.Map(pages);
        pages.MapNights();
        pages.MapRecords();
        pages.MapSeasons();
        pages.MapStatus();
        SignInRoutes.Map(pages);
        MyWatchesRoutes.Map(pages);
        UnsubscribeRoutes.Map(pages);
        OperatorRoutes.Map(pages);
        pages.MapGet("/sources", () => PageResult.Of<SourcesPage>(new Dictionary<string, object?>()));
    }

    // HEAD is GET without the body (RFC 9110, 9.3.2), which the server leaves out by the method that was sent.
    private static async Task ReadHeadAsync(HttpContext context, RequestDelegate next)
    {
        var sent = context.Request.Method;
        if (HttpMethods.IsHead(sent)) context.Request.Method = HttpMethods.Get;
        try
        {
            await next(context);
        }
        finally
        {
            context.Request.Method = sent;
        }
    }

    // Without PagesBase nobody has said that the pages are for others.
    private static Task OnlyHereAsync(HttpContext context, RequestDelegate next)
    {
        if (RequestOrigin.IsThisMachine(context) || context.Request.Path.StartsWithSegments(MetricsEndpoint.Path)) return next(context);
        context.Response.StatusCode = StatusCodes.Status404NotFound;
        return Task.CompletedTask;
    }
}

using NightWatch.Delivery.Bounces;
using NightWatch.Delivery.Links;
using NightWatch.Delivery.Mail;
using NightWatch.Delivery.Outbox;
using NightWatch.Delivery.Webhooks;
using NightWatch.Pages.Calendars;
using NightWatch.Service.Settings;
using NightWatch.Store.Calendar;
using NightWatch.Store.Subscribers;
using NightWatch.Store.Suppression;
using NightWatch.Watchkeeping.Calls;
using NodaTime;

namespace NightWatch.Service.Hosting;

/// <summary>What the ways to the subscriber need beside the letters themselves.</summary>
internal static class DeliveryServices
{
    public static IServiceCollection AddDelivery(this IServiceCollection services, AllSettings settings) => services
        .AddSingleton(settings.Webhooks).AddSingleton(settings.Bounces).AddSingleton<LetterCalls>()
        .AddSingleton<IMailTransport>(parts => new ChannelTransport(
            MailTransports.Create(settings.Mail, parts.GetRequiredService<TimeProvider>()),
            new WebhookTransport(settings.Webhooks, parts.GetRequiredService<StoredLinkSigner>(), parts.GetRequiredService<IClock>())))
        .AddSingleton<RationStore>().AddSingleton<SendRate>()
        .AddSingleton<SuppressionStore>().AddSingleton<BounceReader>()
        .AddSingleton<CalendarFeedStore>().AddSingleton<CalendarFeeds>();
}
